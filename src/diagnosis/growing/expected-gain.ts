/**
 * What more of the present phase would tell, before it is there: the fit's own derivatives, taken over a recording that
 * goes on, say how much narrower the size would become and how far two causes would part.
 */
import { choleskyFactor, choleskySolve } from '../fit/cholesky.ts';
import { gaussianSd } from '../fit/marginal.ts';
import { FitProblem, type FitRecording } from '../fit/problem.ts';
import { hessianOf, type Track } from './track.ts';

interface Ahead {
  readonly problem: FitProblem;
  readonly residuals: Float64Array;
  readonly jacobian: Float64Array;
}

function lookAhead(track: Track, recording: FitRecording): Ahead {
  const problem = new FitProblem(track.problem.parameters, [recording]);
  const residuals = new Float64Array(problem.rows);
  const jacobian = new Float64Array(problem.rows * problem.size);
  problem.residuals(track.z, residuals);
  problem.jacobian(track.z, jacobian);
  return { problem, residuals, jacobian };
}

/**
 * Standard deviation of the ln of the hole's diameter now and after more of the same.
 *
 * @param rowsNow observations that are there
 * @param rowsLater observations there will be, for each time in question
 * @returns the present one and one for each time [-], and the runs of the model it took
 */
export function sdAhead(
  track: Track,
  recording: FitRecording,
  rowsNow: number,
  rowsLater: readonly number[],
): { readonly now: number; readonly later: readonly number[]; readonly runs: number } {
  const { problem, jacobian } = lookAhead(track, recording);
  const key = problem.parameters.findIndex((p) => p.name === 'leak');
  // the diameter goes with the root of the area
  const scale = 0.5 * problem.parameters[key]!.sd;
  const sd = (rows: number) =>
    scale * gaussianSd(hessianOf(jacobian, problem.size, problem.rows, 0, rows), problem.size, key);
  return { now: sd(rowsNow), later: rowsLater.map(sd), runs: problem.runs };
}

/**
 * Misfit that the rival will gather if the leader is right, after it has adapted itself as well as its own nuisances
 * allow: the least of the rival's cost over what is there and what the leader foretells, minus its least over what is
 * there, both in the Gauss-Newton approximation.
 *
 * @returns [ln], not tempered, and the runs of the model it took
 */
export function partingAhead(
  leader: Track,
  rival: Track,
  recording: FitRecording,
  rowsNow: number,
): { readonly gain: number; readonly runs: number } {
  const own = new FitProblem(leader.problem.parameters, [recording]);
  const residuals = new Float64Array(own.rows);
  own.residuals(leader.z, residuals);
  const other = lookAhead(rival, recording);
  const foretold = other.residuals.map((r, k) => (k < rowsNow ? r : r - residuals[k]!));
  const gain = addedMisfit(other.jacobian, foretold, rival.z, rowsNow);
  return { gain, runs: own.runs + other.problem.runs };
}

/**
 * How much the least cost of a linear fit rises when more rows come, 1/2 |r|^2 + 1/2 |z|^2.
 *
 * @param jacobian column by column, all rows
 * @param residuals at z, all rows
 * @param z the present parameters, at their least or not
 * @param rowsNow rows that count already
 */
export function addedMisfit(jacobian: Float64Array, residuals: Float64Array, z: Float64Array, rowsNow: number): number {
  const n = z.length;
  const m = residuals.length;
  let added = 0;
  const now = Float64Array.from(z, (v) => -v);
  const later = new Float64Array(n);
  for (let k = 0; k < m; k++) {
    const r = residuals[k]!;
    if (k >= rowsNow) added += r * r;
    const into = k < rowsNow ? now : later;
    for (let j = 0; j < n; j++) into[j] = into[j]! + jacobian[j * m + k]! * r;
  }
  const before = explained(hessianOf(jacobian, n, m, 0, rowsNow), now);
  const after = explained(
    hessianOf(jacobian, n, m),
    now.map((g, j) => g + later[j]!),
  );
  return Math.max(0, 0.5 * (added - after + before));
}

/** What a Gauss-Newton step would take off twice the cost: g' H^-1 g. */
function explained(hessian: Float64Array, gradient: Float64Array): number {
  const n = gradient.length;
  if (!choleskyFactor(hessian, n)) return 0;
  const x = Float64Array.from(gradient);
  choleskySolve(hessian, n, x);
  return x.reduce((s, v, j) => s + v * gradient[j]!, 0);
}
