/** The noise that the best explanation leaves, and that explanation fitted anew under it. */
import { levenbergMarquardt } from '../fit/levenberg-marquardt.ts';
import { FitProblem } from '../fit/problem.ts';
import { estimateNoise, type Noise, SMALL_NOISE } from '../likelihood/noise.ts';
import type { Prepared } from '../prepare.ts';
import { laplaceLogEvidence } from './laplace.ts';
import { MOST_NOISE_PASSES, SECOND_PASS } from './passes.ts';
import type { Held } from './weighed.ts';
import { withNoise } from './with-noise.ts';

export interface Settled {
  /** By recording; the same for all causes, so that their evidences compare. */
  readonly noise: readonly Noise[];
  readonly held: Held;
  readonly runs: number;
}

/**
 * A fit sets the noise and the noise the fit, in turn until neither moves. A fit that ended in a side valley leaves much
 * unexplained, calls it noise and so stays there: a second round begins by asking the model to follow the readings closely, and the
 * round with the highest evidence counts.
 *
 * @param other an explanation by two faults that may leave less noise than any one fault
 */
export function settleNoise(prepared: readonly Prepared[], found: Held, other?: Held): Settled {
  const as = settleFrom(prepared, found, undefined);
  const closely = settleFrom(
    prepared,
    as.held,
    prepared.map(() => SMALL_NOISE),
  );
  const rounds = [as, closely];
  if (other) rounds.push(settleFrom(prepared, other, undefined));
  const better = rounds.reduce((a, b) => (evidenceOf(b) > evidenceOf(a) ? b : a));
  return { ...better, runs: rounds.reduce((sum, r) => sum + r.runs, 0) };
}

function settleFrom(prepared: readonly Prepared[], found: Held, first: readonly Noise[] | undefined): Settled {
  let held = found;
  let noise: readonly Noise[] = [];
  let runs = 0;
  for (let pass = 0; pass < MOST_NOISE_PASSES; pass++) {
    const { problem, fit } = held;
    const next =
      pass === 0 && first
        ? first
        : prepared.map((p, r) => estimateNoise(p.observations, residualsAt(problem, fit.z, r), p.procedure));
    if (next.every((n, r) => same(n, noise[r]))) break;
    noise = next;
    const under = new FitProblem(problem.parameters, withNoise(prepared, noise));
    held = { problem: under, fit: levenbergMarquardt(under, fit.z, SECOND_PASS) };
    runs += under.runs;
  }
  return { noise, held, runs };
}

const same = (a: Noise, b: Noise | undefined) =>
  b !== undefined &&
  a.whiteScale === b.whiteScale &&
  a.slowPa === b.slowPa &&
  a.slowS === b.slowS &&
  a.roughness === b.roughness;

/** ln evidence with the noise's own normaliser, so that different noises compare. */
const evidenceOf = ({ held }: Settled): number =>
  laplaceLogEvidence(held.fit) - 0.5 * held.problem.recordings.reduce((sum, r) => sum + r.whitening.logDeterminant, 0);

/** Recorded minus modelled readings, not whitened [Pa]. */
function residualsAt(problem: FitProblem, z: Float64Array, recording: number): Float64Array {
  const { gaugePa } = problem.recordings[recording]!;
  const modelled = new Float64Array(gaugePa.length);
  problem.model(z, recording, modelled);
  return modelled.map((x, k) => gaugePa[k]! - x);
}
