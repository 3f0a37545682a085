/**
 * LU factorisation on a fixed pattern of non-zeros, without pivoting, for the matrices W = I/(gamma h) - J
 * of flow networks. Mass balance makes their columns nearly diagonally dominant, and a smaller step makes them
 * more so; a pivot that is too small is reported, and the integrator answers with a smaller step.
 *
 * The order of elimination is found once (least degree first) and written down as a list of addresses, so that
 * factoring and solving are straight loops without searching or allocating.
 */
export interface LuPlan {
  readonly size: number;
  /** Elimination order: original indices. */
  readonly order: Int32Array;
  /** For step k: rows and columns still to be eliminated that meet pivot k, `neighbours[start[k]..start[k+1])`. */
  readonly start: Int32Array;
  readonly neighbours: Int32Array;
  /** Addresses (row-major with `stride`) of all entries that can become non-zero, fill included. */
  readonly entries: Int32Array;
}

/**
 * Plans the elimination of a matrix whose non-zeros are given (symmetrised) by `pattern`, row-major, 0 or 1.
 *
 * @param size rows and columns to eliminate
 * @param pattern 1 where the matrix can be non-zero, row-major
 * @param stride width of the pattern and of the matrix
 * @returns the plan
 */
export function planLu(size: number, pattern: Uint8Array, stride: number = size): LuPlan {
  const meets: Set<number>[] = Array.from({ length: size }, () => new Set<number>());
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      if (i !== j && (pattern[i * stride + j] || pattern[j * stride + i])) {
        meets[i]!.add(j);
        meets[j]!.add(i);
      }
    }
  }
  const left = new Set<number>(Array.from({ length: size }, (_, i) => i));
  const order = new Int32Array(size);
  const start = new Int32Array(size + 1);
  const neighbours: number[] = [];
  const entries: number[] = [];
  for (let k = 0; k < size; k++) {
    let best = -1;
    for (const i of left) if (best < 0 || meets[i]!.size < meets[best]!.size) best = i;
    left.delete(best);
    order[k] = best;
    const around = [...meets[best]!].sort((a, b) => a - b);
    neighbours.push(...around);
    entries.push(best * stride + best, ...around.flatMap((i) => [best * stride + i, i * stride + best]));
    start[k + 1] = neighbours.length;
    for (const i of around) {
      meets[i]!.delete(best);
      for (const j of around) if (i !== j) meets[i]!.add(j);
    }
  }
  return {
    size,
    order,
    start,
    neighbours: Int32Array.from(neighbours),
    entries: Int32Array.from(entries).sort(),
  };
}

/** A pivot smaller than this part of its row before elimination counts as singular (judgement: eps^(3/4)). */
const PIVOT_FLOOR = 1e-12;

/**
 * Factors `w` (row-major with `stride`) in place: unit lower factors below, inverse pivots on the diagonal.
 * Returns the original index of a bad pivot, or -1.
 *
 * @param plan plan of the pattern
 * @param w matrix, becomes its factors
 * @param stride width of the matrix
 * @returns index of the bad pivot, or -1
 */
export function factorLu(plan: LuPlan, w: Float64Array, stride: number): number {
  const { size, order, start, neighbours } = plan;
  for (let k = 0; k < size; k++) {
    const p = order[k]!;
    const from = start[k]!;
    const to = start[k + 1]!;
    const rowP = p * stride;
    const pivot = w[rowP + p]!;
    let largest = 0;
    for (let a = from; a < to; a++) {
      const v = Math.abs(w[rowP + neighbours[a]!]!);
      if (v > largest) largest = v;
    }
    if (!(Math.abs(pivot) > PIVOT_FLOOR * largest) || pivot === 0) return p;
    const inverse = 1 / pivot;
    w[rowP + p] = inverse;
    for (let a = from; a < to; a++) {
      const rowI = neighbours[a]! * stride;
      const below = w[rowI + p]!;
      if (below === 0) continue;
      const factor = below * inverse;
      w[rowI + p] = factor;
      for (let b = from; b < to; b++) {
        const j = neighbours[b]!;
        w[rowI + j] = w[rowI + j]! - factor * w[rowP + j]!;
      }
    }
  }
  return -1;
}

/**
 * Solves with the factors; `x` holds the right-hand side and becomes the solution.
 *
 * @param plan plan of the pattern
 * @param w factors
 * @param stride width of the matrix
 * @param x right-hand side, becomes the solution
 */
export function solveLu(plan: LuPlan, w: Float64Array, stride: number, x: Float64Array): void {
  const { size, order, start, neighbours } = plan;
  for (let k = 0; k < size; k++) {
    const p = order[k]!;
    const value = x[p]!;
    const to = start[k + 1]!;
    for (let a = start[k]!; a < to; a++) {
      const i = neighbours[a]!;
      x[i] = x[i]! - w[i * stride + p]! * value;
    }
  }
  for (let k = size - 1; k >= 0; k--) {
    const p = order[k]!;
    const row = p * stride;
    let value = x[p]!;
    const to = start[k + 1]!;
    for (let a = start[k]!; a < to; a++) {
      const j = neighbours[a]!;
      value -= w[row + j]! * x[j]!;
    }
    x[p] = value * w[row + p]!;
  }
}
