/**
 * Troubleshooting when only two causes are possible, for all odds between them: the least expected cost until one of them is
 * settled. What a step costs may differ between the causes. The odds lie on an even grid of their logarithm, so that an
 * outcome of a check is a fixed shift. Between grid points the value is taken on the chord: as a function of the two
 * probabilities it is concave and homogeneous, so the chord lies below it, and values raised from zero by sweeps are lower
 * bounds whenever the sweeps stop. A check may be repeated here, which can only make it cheaper.
 */

/** Distance of grid points in the natural logarithm of the odds. */
const STEP = 0.25;
/** Grid points on either side of even odds. */
const HALF = 28;
const POINTS = 2 * HALF + 1;
/** Points beside the grid on either side, for outcomes that lead beyond it. */
const PAD = 34;
export const WIDTH = POINTS + 2 * PAD;
/** Where even odds lie in a table. */
export const EVEN = PAD + HALF;

const HALF_STEP = STEP / 2;
/** Weight of the nearer grid point is g (1 + (g^2 - 1) BEND), g its nearness: sinh(g STEP/2) / sinh(STEP/2) from below, within 1e-5. */
export const BEND = HALF_STEP ** 2 / 6;

/** Square root of the odds, and its inverse: the two probabilities at a grid point, scaled to a geometric mean of 1. */
const FIRST = Float64Array.from({ length: POINTS }, (_, q) => Math.exp((q - HALF) * HALF_STEP));
const SECOND = FIRST.map((x) => 1 / x);
/** Beyond the grid a value falls with the rarer probability. */
const FADE = Float64Array.from({ length: PAD + 1 }, (_, d) => Math.exp(-d * HALF_STEP));

/** A natural logarithm of odds, or of a part of them, in steps of the grid. */
export const inSteps = (ln: number): number => ln / STEP;

const onChord = (nearness: number): number => Math.sinh(nearness * HALF_STEP) / Math.sinh(HALF_STEP);

/** A check between two causes. Outcomes that only one of them can give settle the matter and are left out. */
export interface Telling {
  /** Where its cost under the first and under the second cause stands in the list of costs. */
  readonly first: number;
  readonly second: number;
  /** By outcome: grid points to go, and what the two neighbours there count. */
  readonly shift: Int32Array;
  readonly near: Float64Array;
  readonly far: Float64Array;
  /** By outcome, for following a policy: grid points to go, rounded, and its chance under either cause. */
  readonly jump: Int32Array;
  readonly chanceFirst: Float64Array;
  readonly chanceSecond: Float64Array;
}

/** Least chance of an outcome that counts. */
const IMPOSSIBLE = 1e-12;

export function telling(
  likelihood: readonly Float64Array[],
  i: number,
  j: number,
  first: number,
  second: number,
): Telling {
  const both = likelihood.filter((p) => p[i]! > IMPOSSIBLE && p[j]! > IMPOSSIBLE);
  const steps = both.map((p) => Math.max(-PAD, Math.min(PAD - 1e-9, inSteps(Math.log(p[i]! / p[j]!)))));
  const scale = both.map((p) => Math.sqrt(p[i]! * p[j]!));
  const shift = Int32Array.from(steps, Math.floor);
  return {
    first,
    second,
    shift,
    near: Float64Array.from(steps, (t, o) => scale[o]! * onChord(1 - (t - shift[o]!))),
    far: Float64Array.from(steps, (t, o) => scale[o]! * onChord(t - shift[o]!)),
    jump: Int32Array.from(steps, Math.round),
    chanceFirst: Float64Array.from(both, (p) => p[i]!),
    chanceSecond: Float64Array.from(both, (p) => p[j]!),
  };
}

export interface TwoCauses {
  readonly i: number;
  readonly j: number;
  readonly checks: readonly Telling[];
  /** Where the costs of repairs in vain stand: of the second cause under the first, and the other way round. */
  readonly wastedFirst: readonly number[];
  readonly wastedSecond: readonly number[];
  /** Where the costs of ending stand. */
  readonly endFirst: number;
  readonly endSecond: number;
  /** Value by grid point, for a geometric mean of the two probabilities of 1. */
  readonly table: Float64Array;
  /** Best step by grid point: place in `checks`, END, or WASTED less the place of a repair's cost. */
  readonly policy: Int32Array;
}

const END = -1;
const WASTED = -2;

export const newTables = () => ({ table: new Float64Array(WIDTH), policy: new Int32Array(POINTS) });

const cheapest = (places: readonly number[], costs: Float64Array): number =>
  places.reduce((best, m) => (best < 0 || costs[m]! < costs[best]! ? m : best), -1);

/**
 * Raises (or, after costs have changed, adapts) the table by sweeps to and fro.
 *
 * @param costs by place
 * @param sweeps most sweeps
 * @param enough stops when no value changes by more
 */
export function solve(pair: TwoCauses, costs: Float64Array, sweeps: number, enough: number): void {
  const { checks, table, policy } = pair;
  const endFirst = costs[pair.endFirst]!;
  const endSecond = costs[pair.endSecond]!;
  const first = cheapest(pair.wastedFirst, costs);
  const second = cheapest(pair.wastedSecond, costs);
  const wastedFirst = first < 0 ? Number.POSITIVE_INFINITY : costs[first]!;
  const wastedSecond = second < 0 ? Number.POSITIVE_INFINITY : costs[second]!;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    let change = 0;
    for (let n = 0; n < POINTS; n++) {
      const q = sweep % 2 === 0 ? n : POINTS - 1 - n;
      const x = FIRST[q]!;
      const y = SECOND[q]!;
      let value = endFirst * x + endSecond * y;
      let step = END;
      if (wastedFirst * x < value) {
        value = wastedFirst * x;
        step = WASTED - first;
      }
      if (wastedSecond * y < value) {
        value = wastedSecond * y;
        step = WASTED - second;
      }
      for (let k = 0; k < checks.length; k++) {
        const check = checks[k]!;
        let cost = costs[check.first]! * x + costs[check.second]! * y;
        if (cost >= value) continue;
        const { shift, near, far } = check;
        for (let o = 0; o < shift.length; o++) {
          const z = PAD + q + shift[o]!;
          cost += near[o]! * table[z]! + far[o]! * table[z + 1]!;
        }
        if (cost < value) {
          value = cost;
          step = k;
        }
      }
      policy[q] = step;
      change = Math.max(change, Math.abs(value - table[PAD + q]!));
      table[PAD + q] = value;
    }
    for (let d = 1; d <= PAD; d++) {
      table[PAD - d] = table[PAD]! * FADE[d]!;
      table[PAD + POINTS - 1 + d] = table[PAD + POINTS - 1]! * FADE[d]!;
    }
    if (change <= enough) return;
  }
}

/** Steps that are followed when uses are counted, and the chance below which a way is left. */
const FOLLOWED = 16;
const FAINT = 1e-2;
/** Chance of being at a grid point under either cause, now and after the next step: two pairs of rows that take turns. */
const CHANCES = Array.from({ length: 4 }, () => new Float64Array(POINTS));
/** Points where they are not 0, now and after the next step. */
const PLACES = Array.from({ length: 2 }, () => new Int32Array(POINTS));

/** Adds, by place, how often a step is expected to be taken under its cause, when the policy is followed from these probabilities. */
export function countUses(pair: TwoCauses, first: number, second: number, uses: Float64Array): void {
  const { checks, policy } = pair;
  let [a, b, nextA, nextB] = CHANCES as [Float64Array, Float64Array, Float64Array, Float64Array];
  let [places, nextPlaces] = PLACES as [Int32Array, Int32Array];
  const start = Math.max(0, Math.min(POINTS - 1, Math.round(inSteps(Math.log(first / second))) + HALF));
  a[start] = 1;
  b[start] = 1;
  places[0] = start;
  let count = 1;
  for (let d = 0; d < FOLLOWED && count > 0; d++) {
    let nextCount = 0;
    for (let n = 0; n < count; n++) {
      const q = places[n]!;
      const pa = a[q]!;
      const pb = b[q]!;
      a[q] = 0;
      b[q] = 0;
      if (pa + pb < FAINT) continue;
      const step = policy[q]!;
      if (step === END) {
        uses[pair.endFirst]! += pa;
        uses[pair.endSecond]! += pb;
      } else if (step <= WASTED) {
        const place = WASTED - step;
        uses[place]! += pair.wastedFirst.includes(place) ? pa : pb;
      } else {
        const { first: atFirst, second: atSecond, jump, chanceFirst, chanceSecond } = checks[step]!;
        uses[atFirst]! += pa;
        uses[atSecond]! += pb;
        for (let o = 0; o < jump.length; o++) {
          const to = Math.max(0, Math.min(POINTS - 1, q + jump[o]!));
          if (nextA[to] === 0 && nextB[to] === 0) nextPlaces[nextCount++] = to;
          nextA[to]! += pa * chanceFirst[o]!;
          nextB[to]! += pb * chanceSecond[o]!;
        }
      }
    }
    [a, b, nextA, nextB] = [nextA, nextB, a, b];
    [places, nextPlaces] = [nextPlaces, places];
    count = nextCount;
  }
  a.fill(0);
  b.fill(0);
}
