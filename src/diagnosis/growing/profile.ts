/**
 * Posterior of one parameter with the others integrated out, at a few runs of the model a point: along the parameter the
 * others are moved by the Gaussian's own conditional mean and then corrected with the derivatives at the best point.
 * The thrifty form of `../fit/marginal.ts`.
 */
import { choleskyFactor, choleskySolve, logDeterminant } from '../fit/cholesky.ts';
import { gaussianSd, logIntegral } from '../fit/marginal.ts';
import type { FollowedProblem } from './followed-problem.ts';
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
/** Corrections of the other parameters at a point; one that promises less than this [ln] is the last. */
const CORRECTIONS = 3;
const WORTH_CORRECTION = 0.3;
/** A point that seems better than the best by more than this [ln] is not believed. */
const BETTER = 0.5;
/** A fall by more than this [ln] from one point to the next is the walk's, not the density's. */
const CLIFF = 40;
/** Longest correction of any other parameter, in prior standard deviations. */
const LONGEST = 1;

/** @param track just stepped, so that its derivatives belong to its data */
export function profile(track: Track<FollowedProblem>, key: number): Profile | undefined {
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
  const centre = points[0]!.log;
  let top = centre;
  const residuals = new Float64Array(problem.rows);
  for (const direction of [-1, 1]) {
    const z = Float64Array.from(track.z);
    let walked = 0;
    for (let k = 1; k <= MOST_POINTS; k++) {
      z[key] = z[key]! + direction * spacing;
      rest.forEach((i, r) => {
        z[i] = z[i]! + direction * spacing * ridge[r]!;
      });
      if (Math.abs(z[key]!) > REACH && Math.abs(z[key]!) > Math.abs(track.z[key]!)) break;
      problem.residuals(z, residuals);
      let cost = costOf(residuals, z);
      let log = -cost - volume;
      for (let turn = 0; turn < CORRECTIONS; turn++) {
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
        log = -(cost - promised) - volume;
        const before = Float64Array.from(z);
        rest.forEach((i, r) => {
          z[i] = z[i]! + scale * step[r]!;
        });
        if (turn + 1 === CORRECTIONS || promised < WORTH_CORRECTION) break;
        problem.residuals(z, residuals);
        const corrected = costOf(residuals, z);
        if (corrected >= cost) {
          z.set(before);
          log = -cost - volume;
          break;
        }
        cost = corrected;
      }
      // no point on the way is better than the best one: there the derivatives no longer hold
      if (log > centre + BETTER) break;
      // so far out the model has no numbers any more
      if (!Number.isFinite(log) || log < points[points.length - 1]!.log - CLIFF) break;
      points.push({ z: z[key]!, log });
      walked = k;
      top = Math.max(top, log);
      if (log < top - DEPTH) break;
    }
    points.push(...gaussianTail(points[points.length - 1]!, track.z[key]!, walked, direction, spacing, sd, top));
  }
  points.sort((a, b) => a.z - b.z);
  const z = points.map((p) => p.z);
  const logDensity = points.map((p) => p.log);
  return { z, logDensity, logEvidence: logIntegral(z, logDensity) - 0.5 * Math.log(2 * Math.PI) };
}

/** Where the walk ended before the density did, the Gaussian's own fall goes on from there. */
function gaussianTail(
  last: { readonly z: number; readonly log: number },
  centre: number,
  walked: number,
  direction: number,
  spacing: number,
  sd: number,
  top: number,
): { z: number; log: number }[] {
  const tail: { z: number; log: number }[] = [];
  const fall = (z: number) => 0.5 * ((z - centre) / sd) ** 2;
  const from = walked > 0 ? last : { z: centre, log: top };
  for (let k = walked + 1; k <= MOST_POINTS; k++) {
    const before = tail[tail.length - 1] ?? from;
    if (before.log < top - DEPTH) break;
    const z = from.z + direction * (k - walked) * spacing;
    if (Math.abs(z) > REACH && Math.abs(z) > Math.abs(centre)) break;
    tail.push({ z, log: from.log + fall(from.z) - fall(z) });
  }
  return tail;
}

/** Points of a Gaussian, for a parameter that is well determined. */
export function gaussianProfile(centre: number, sd: number): Omit<Profile, 'logEvidence'> {
  const steps = Array.from({ length: 15 }, (_, i) => 0.5 * (i - 7));
  return { z: steps.map((s) => centre + s * sd), logDensity: steps.map((s) => -0.5 * s * s) };
}
