/** A size with its interval as a log-normal, and what follows from two of them. */
import type { Interval } from '../../diagnosis/finding.ts';

/** Half-width of a 90 % interval of a normal, in standard deviations. */
const Z90 = 1.6448536269514722;
/** Below this a hole is as good as none, mm; keeps logarithms finite. */
const LEAST_MM = 0.02;

export interface SizeBelief {
  readonly ln: number;
  readonly sd: number;
}

export function sizeBelief({ median, lo90, hi90 }: Interval): SizeBelief {
  const ln = Math.log(Math.max(LEAST_MM, median));
  const up = Math.log(Math.max(LEAST_MM, hi90)) - ln;
  const down = ln - Math.log(Math.max(LEAST_MM, lo90));
  return { ln, sd: Math.max(1e-3, (up + down) / (2 * Z90)) };
}

/** Standard normal distribution function; Abramowitz and Stegun 26.2.17, error below 7.5e-8. */
export function normalCdf(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    Math.exp(-0.5 * z * z) *
    0.3989422804014327 *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z >= 0 ? 1 - tail : tail;
}

/** Probability that the size is at most this. */
export const atMost = (size: SizeBelief, mm: number): number => normalCdf((Math.log(mm) - size.ln) / size.sd);

/** Probability that `after` is smaller than `ratio` times `before`. */
export const smaller = (after: SizeBelief, before: SizeBelief, ratio: number): number =>
  normalCdf((before.ln + Math.log(ratio) - after.ln) / Math.hypot(after.sd, before.sd));

/** Even steps through a log-normal's quantiles, for sums that have no closed form. */
export function quantilesOf(size: SizeBelief, count: number): number[] {
  return normalSteps(count).map((z) => Math.exp(size.ln + size.sd * z));
}

const STEPS_BY_COUNT = new Map<number, readonly number[]>();

/** Kept once worked out: a budget asks for the same steps many times. */
function normalSteps(count: number): readonly number[] {
  const kept = STEPS_BY_COUNT.get(count);
  if (kept !== undefined) return kept;
  const steps = Array.from({ length: count }, (_, i) => normalQuantile((i + 0.5) / count));
  STEPS_BY_COUNT.set(count, steps);
  return steps;
}

/** Inverse of `normalCdf` by bisection: few calls, no constants to get wrong. */
function normalQuantile(p: number): number {
  let low = -9;
  let high = 9;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (normalCdf(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
