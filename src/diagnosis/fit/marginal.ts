/**
 * Posterior of one parameter with the others integrated out: on a grid of its values the rest is refitted and its
 * Gaussian volume taken. Where a single Gaussian at the best point fails (a hole that could as well be larger), this
 * still gives evidence and intervals.
 * Source: Tierney and Kadane, J. Am. Stat. Assoc. 81 (1986) 82-86.
 */
import { choleskyFactor, choleskySolve, logDeterminant } from './cholesky.ts';
import { type Fit, type LeastSquares, levenbergMarquardt } from './levenberg-marquardt.ts';

export interface Marginal {
  /** Values of z, increasing, and the log density there (not normalised). */
  readonly z: readonly number[];
  readonly logDensity: readonly number[];
  /** ln of the integral over all parameters. */
  readonly logEvidence: number;
  readonly best: Fit;
}

export interface MarginalSettings {
  /** Spacing of the grid in standard deviations of the Gaussian approximation. */
  readonly spacing: number;
  /** Widest spacing in z. */
  readonly widest: number;
  /** How far below the top the grid ends, in ln. */
  readonly depth: number;
  readonly iterations: number;
  /** Never beyond this |z|. */
  readonly reach: number;
}

/** A walk that meets a point better than where it began by this much [ln] begins again there, at most so often. */
const BETTER = 0.2;
const MOST_WALKS = 3;
const POLISH = { mostIterations: 25, enough: 0.02 };
/**
 * A held fit ends when a full step promises less than this [ln]. Held fits that end early leave a ragged profile whose
 * steep sides are not the data's: intervals that cover 0.81 instead of 0.90 of drawn truths.
 */
const HELD_ENOUGH = 0.02;

export function marginalise(problem: LeastSquares, fit: Fit, key: number, s: MarginalSettings): Marginal {
  let from = fit;
  for (let walk = 1; ; walk++) {
    const points = walkGrid(problem, from, key, s);
    const lowest = points.reduce((a, b) => (b.fit.cost < a.fit.cost ? b : a));
    if (walk < MOST_WALKS && lowest.fit.cost < from.cost - BETTER) {
      from = levenbergMarquardt(problem, lowest.fit.z, POLISH);
      continue;
    }
    const z = points.map((p) => p.z);
    const logDensity = points.map((p) => p.log);
    return { z, logDensity, best: from, logEvidence: logIntegral(z, logDensity) - 0.5 * Math.log(2 * Math.PI) };
  }
}

interface GridPoint {
  readonly z: number;
  readonly log: number;
  readonly fit: Fit;
}

/** Refits the rest at each value of the parameter, outwards from a fit until the density has fallen by the depth. */
function walkGrid(problem: LeastSquares, fit: Fit, key: number, s: MarginalSettings): GridPoint[] {
  const n = fit.z.length;
  const spacing = Math.min(s.widest, s.spacing * gaussianSd(fit.hessian, n, key));
  const centre = { z: fit.z[key]!, log: -(fit.cost + 0.5 * restLogDeterminant(fit.hessian, n, key)), fit };
  const points: GridPoint[] = [centre];
  const along = conditionalSlope(fit.hessian, n, key);
  let top = centre.log;
  for (const direction of [-1, 1]) {
    // where the rest goes as the parameter moves: first as the Gaussian approximation says, then as it went last
    let last: Float64Array = fit.z.map((x, i) => x - direction * spacing * along[i]!);
    let z: Float64Array = fit.z;
    for (let k = 1; ; k++) {
      const at = centre.z + direction * k * spacing;
      if (Math.abs(at) > s.reach && Math.abs(at) > Math.abs(centre.z)) break;
      const start = z.map((x, i) => 2 * x - last[i]!);
      start[key] = at;
      const held = levenbergMarquardt(problem, start, {
        mostIterations: s.iterations,
        enough: HELD_ENOUGH,
        hold: key,
      });
      last = z;
      z = held.z;
      const log = -(held.cost + 0.5 * restLogDeterminant(held.hessian, n, key));
      // where the model has no answer the grid ends
      if (!Number.isFinite(log)) break;
      points.push({ z: at, log, fit: held });
      if (log > top) top = log;
      if (log < top - s.depth) break;
    }
  }
  return points.sort((a, b) => a.z - b.z);
}

/** How far each parameter's conditional mean moves per unit of one parameter, under the Gaussian approximation. */
function conditionalSlope(hessian: Float64Array, n: number, key: number): Float64Array {
  const l = Float64Array.from(hessian);
  const column = new Float64Array(n);
  column[key] = 1;
  if (!choleskyFactor(l, n)) return column;
  choleskySolve(l, n, column);
  const own = column[key]!;
  return column.map((x) => x / own);
}

/** Standard deviation of one parameter under the Gaussian approximation, in z. */
export function gaussianSd(hessian: Float64Array, n: number, key: number): number {
  const full = Float64Array.from(hessian);
  if (!choleskyFactor(full, n)) return 1;
  return Math.exp(0.5 * (restLogDeterminant(hessian, n, key) - logDeterminant(full, n)));
}

/** ln of the integral of a density whose logarithm is linear between the points. */
export function logIntegral(z: readonly number[], logDensity: readonly number[]): number {
  const top = Math.max(...logDensity);
  let sum = 0;
  for (let i = 0; i + 1 < z.length; i++) {
    const a = logDensity[i]! - top;
    const b = logDensity[i + 1]! - top;
    const d = b - a;
    const mean = Math.abs(d) < 1e-6 ? Math.exp(0.5 * (a + b)) : (Math.exp(b) - Math.exp(a)) / d;
    sum += mean * (z[i + 1]! - z[i]!);
  }
  return sum > 0 ? top + Math.log(sum) : top;
}

/** ln det of the Hessian without one row and column. */
function restLogDeterminant(hessian: Float64Array, n: number, without: number): number {
  const m = n - 1;
  const a = new Float64Array(m * m);
  for (let i = 0, r = 0; i < n; i++) {
    if (i === without) continue;
    for (let j = 0, c = 0; j < n; j++) {
      if (j === without) continue;
      a[r * m + c] = hessian[i * n + j]!;
      c++;
    }
    r++;
  }
  return choleskyFactor(a, m) ? logDeterminant(a, m) : 1e3;
}
