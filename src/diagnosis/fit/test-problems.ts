/** Least-squares problems whose answer is known, for the tests of the fit. */
import type { LeastSquares } from './levenberg-marquardt.ts';

/** Residuals as a function of z, derivatives of the model (minus those of the residuals) by central differences. */
export function problemOf(size: number, rows: number, residual: (z: ArrayLike<number>) => number[]): LeastSquares {
  return {
    size,
    rows,
    residuals(z, out) {
      out.set(residual(z));
    },
    jacobian(z, out) {
      for (let j = 0; j < size; j++) {
        const up = Float64Array.from(z);
        const down = Float64Array.from(z);
        up[j]! += 1e-5;
        down[j]! -= 1e-5;
        const a = residual(up);
        const b = residual(down);
        for (let k = 0; k < rows; k++) out[j * rows + k] = -(a[k]! - b[k]!) / 2e-5;
      }
    },
  };
}

/** r = y - A z: Gaussian posterior in closed form. */
export const linearProblem = (y: readonly number[], a: readonly (readonly number[])[]): LeastSquares =>
  problemOf(a[0]!.length, y.length, (z) => y.map((v, k) => v - a[k]!.reduce((s, x, j) => s + x * z[j]!, 0)));

/** Solves a small dense system by elimination with pivoting: independent of the code under test. */
export function solveDense(matrix: readonly (readonly number[])[], right: readonly number[]) {
  const n = right.length;
  const a = matrix.map((row, i) => [...row, right[i]!]);
  let logDeterminant = 0;
  for (let c = 0; c < n; c++) {
    const pivot = a
      .slice(c)
      .reduce((best, _, i) => (Math.abs(a[c + i]![c]!) > Math.abs(a[best]![c]!) ? c + i : best), c);
    [a[c], a[pivot]] = [a[pivot]!, a[c]!];
    logDeterminant += Math.log(Math.abs(a[c]![c]!));
    for (let i = 0; i < n; i++) {
      if (i === c) continue;
      const f = a[i]![c]! / a[c]![c]!;
      for (let j = c; j <= n; j++) a[i]![j]! -= f * a[c]![j]!;
    }
  }
  return { x: a.map((row, i) => row[n]! / row[i]!), logDeterminant };
}

/** ln of the evidence of r = y - A z with z standard normal, (2 pi)^(rows/2) left out: y ~ N(0, A A' + 1). */
export function linearLogEvidence(y: readonly number[], a: readonly (readonly number[])[]): number {
  const covariance = a.map((p, i) => a.map((q, j) => p.reduce((s, x, k) => s + x * q[k]!, i === j ? 1 : 0)));
  const { x, logDeterminant } = solveDense(covariance, y);
  return -0.5 * y.reduce((s, v, i) => s + v * x[i]!, 0) - 0.5 * logDeterminant;
}
