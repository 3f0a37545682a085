/** The noise that the best explanation leaves, and that explanation fitted anew under it. */
import { levenbergMarquardt } from '../fit/levenberg-marquardt.ts';
import { FitProblem } from '../fit/problem.ts';
import { estimateNoise, type Noise } from '../likelihood/noise.ts';
import type { Prepared } from '../prepare.ts';
import { NOISE_PASSES, SECOND_PASS } from './passes.ts';
import type { Held } from './weighed.ts';
import { withNoise } from './with-noise.ts';

export interface Settled {
  /** By recording; the same for all causes, so that their evidences compare. */
  readonly noise: readonly Noise[];
  readonly held: Held;
  readonly runs: number;
}

export function settleNoise(prepared: readonly Prepared[], found: Held): Settled {
  let held = found;
  let noise: Noise[] = [];
  let runs = 0;
  for (let pass = 0; pass < NOISE_PASSES; pass++) {
    const { problem, fit } = held;
    noise = prepared.map((p, r) => estimateNoise(p.observations, residualsAt(problem, fit.z, r), p.procedure));
    const next = new FitProblem(problem.parameters, withNoise(prepared, noise));
    held = { problem: next, fit: levenbergMarquardt(next, fit.z, SECOND_PASS) };
    runs += next.runs;
  }
  return { noise, held, runs };
}

/** Recorded minus modelled readings, not whitened [Pa]. */
function residualsAt(problem: FitProblem, z: Float64Array, recording: number): Float64Array {
  const { gaugePa } = problem.recordings[recording]!;
  const modelled = new Float64Array(gaugePa.length);
  problem.model(z, recording, modelled);
  return modelled.map((x, k) => gaugePa[k]! - x);
}
