/**
 * Posterior of one parameter with the others integrated out, at one run of the model a point: along the parameter the
 * others are moved by the Gaussian's own conditional mean and then corrected once with the derivatives at the best point.
 * The thrifty form of `../fit/marginal.ts`.
 */
import { choleskyFactor, choleskySolve, logDeterminant } from '../fit/cholesky.ts';
import { gaussianSd, logIntegral } from '../fit/marginal.ts';
import { costOf, gradientOf, type Track } from './track.ts';

export interface Profile {
  readonly z: readonly number[];
  readonly logDensity: readonly number[];
  /** ln of the integral over all parameters. */
  readonly logEvidence: number;
}

/** Grid: spacing in standard deviations and at most in z, depth in ln, reach in |z|, points on either side. */
const SPACING = 0.6;
const WIDEST = 0.5;
const DEPTH = 6;
const REACH = 4;
const MOST_POINTS = 9;
/** Longest correction of any other parameter, in prior standard deviations. */
const LONGEST = 1;

/** @param track just stepped, so that its derivatives belong to its data */
export function profile(track: Track, key: number): Profile | undefined {
  const { jacobian, hessian, problem } = track;
  if (!jacobian || !hessian) return undefined;
  const n = problem.size;
  const sd = gaussianSd(hessian, n, key);
  const rest = Array.from({ length: n }, (_, i) => i).filter((i) => i !== key);
  const factor = new Float64Array((n - 1) ** 2);
  rest.forEach((i, r) => {
    rest.forEach((j, c) => {
      factor[r * (n - 1) + c] = hessian[i * n + j]!;
    });
  });
  if (!choleskyFactor(factor, n - 1)) return undefined;
  const volume = 0.5 * logDeterminant(factor, n - 1);
  /** Change of the others with the key along the Gaussian's ridge. */
  const ridge = Float64Array.from(rest, (i) => -hessian[i * n + key]!);
  choleskySolve(factor, n - 1, ridge);

  const spacing = Math.min(WIDEST, SPACING * sd);
  const points = [{ z: track.z[key]!, log: -track.cost - volume }];
  let top = points[0]!.log;
  const residuals = new Float64Array(problem.rows);
  for (const direction of [-1, 1]) {
    const z = Float64Array.from(track.z);
    for (let k = 1; k <= MOST_POINTS; k++) {
      z[key] = z[key]! + direction * spacing;
      rest.forEach((i, r) => {
        z[i] = z[i]! + direction * spacing * ridge[r]!;
      });
      if (Math.abs(z[key]!) > REACH && Math.abs(z[key]!) > Math.abs(track.z[key]!)) break;
      problem.residuals(z, residuals);
      const all = gradientOf(jacobian, residuals, z);
      const downhill = Float64Array.from(rest, (i) => all[i]!);
      const step = Float64Array.from(downhill);
      choleskySolve(factor, n - 1, step);
      let longest = 0;
      for (const s of step) longest = Math.max(longest, Math.abs(s));
      const scale = longest > LONGEST ? LONGEST / longest : 1;
      let promised = 0;
      rest.forEach((_, r) => {
        promised += downhill[r]! * step[r]! * scale * (1 - 0.5 * scale);
      });
      const log = -(costOf(residuals, z) - promised) - volume;
      rest.forEach((i, r) => {
        z[i] = z[i]! + scale * step[r]!;
      });
      // so far out the model has no numbers any more
      if (!Number.isFinite(log)) break;
      points.push({ z: z[key]!, log });
      top = Math.max(top, log);
      if (log < top - DEPTH) break;
    }
  }
  points.sort((a, b) => a.z - b.z);
  const z = points.map((p) => p.z);
  const logDensity = points.map((p) => p.log);
  return { z, logDensity, logEvidence: logIntegral(z, logDensity) - 0.5 * Math.log(2 * Math.PI) };
}

/** Points of a Gaussian, for a parameter that is well determined. */
export function gaussianProfile(centre: number, sd: number): Omit<Profile, 'logEvidence'> {
  const steps = Array.from({ length: 15 }, (_, i) => 0.5 * (i - 7));
  return { z: steps.map((s) => centre + s * sd), logDensity: steps.map((s) => -0.5 * s * s) };
}
