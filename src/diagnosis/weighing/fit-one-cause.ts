/**
 * The fit of one cause alone, with the noise estimated from its own residuals: the path that `weigh-causes.ts` takes
 * for the cause that turns out best. For questions about that cause only, such as whether its intervals are calibrated.
 */
import type { Car } from '../../system/car.ts';
import type { Cause } from '../causes/catalogue.ts';
import { type Fit, levenbergMarquardt } from '../fit/levenberg-marquardt.ts';
import { gaussianSd, marginalise } from '../fit/marginal.ts';
import type { Parameter } from '../fit/parameter.ts';
import { FitProblem } from '../fit/problem.ts';
import { estimateNoise, FIRST_NOISE } from '../likelihood/noise.ts';
import type { Posterior } from '../posterior.ts';
import type { Prepared } from '../prepare.ts';
import { laplaceLogEvidence } from './laplace.ts';
import { parametersOf } from './parameters-of.ts';
import { COARSE_MARGINAL, FIRST_PASS, NOISE_PASSES, SECOND_PASS, WELL_DETERMINED } from './passes.ts';
import type { Weighed, Weighing } from './weighed.ts';
import { withNoise } from './with-noise.ts';

/** A weighing of one cause, certain as nothing else was asked. */
export interface OneCause {
  readonly weighing: Weighing;
  readonly posterior: Posterior;
}

/**
 * @param car what is known of the car
 * @param prepared its recordings
 * @param cause the one cause to fit; it has a size
 * @returns what the sizing needs
 */
export function fitOneCause(car: Car, prepared: readonly Prepared[], cause: Cause): OneCause {
  const parameters = parametersOf(car, prepared, cause);
  let noise = prepared.map(() => FIRST_NOISE);
  let problem = new FitProblem(parameters, withNoise(prepared, noise));
  let fit: Fit | undefined;
  for (const start of startPoints(parameters, cause)) {
    const tried = levenbergMarquardt(problem, start, FIRST_PASS);
    if (!fit || tried.cost < fit.cost) fit = tried;
  }
  const first = fit!.z;
  let runs = problem.runs;
  for (let pass = 0; pass < NOISE_PASSES; pass++) {
    const at = fit!.z;
    noise = prepared.map((p, r) => estimateNoise(p.observations, residualsAt(problem, at, r), p.procedure));
    problem = new FitProblem(parameters, withNoise(prepared, noise));
    fit = levenbergMarquardt(problem, at, SECOND_PASS);
    runs += problem.runs;
  }
  const before = problem.runs;
  const again = levenbergMarquardt(problem, first, SECOND_PASS);
  let best = again.cost < fit!.cost ? again : fit!;
  let logEvidence = laplaceLogEvidence(best);
  const sizeIndex = parameters.findIndex((p) => p.name === cause.size);
  if (gaussianSd(best.hessian, parameters.length, sizeIndex) >= WELL_DETERMINED) {
    const m = marginalise(problem, best, sizeIndex, COARSE_MARGINAL);
    logEvidence = m.logEvidence;
    best = m.best;
  }
  runs += problem.runs - before;
  const pressure = logEvidence - 0.5 * problem.recordings.reduce((s, r) => s + r.whitening.logDeterminant, 0);
  const weighed: Weighed = {
    id: cause.id,
    causes: [cause],
    problem,
    fit: best,
    logEvidence: pressure,
    sizeIndex,
    parts: { pressure, trims: 0, sensor: 0 },
  };
  return {
    weighing: {
      weighed: [weighed],
      pairs: [],
      checks: [],
      recordings: problem.recordings,
      noise,
      parameters: parametersOf(car, prepared),
      runs,
    },
    posterior: { singles: [{ weighed, probability: 1 }], pairs: [], byCause: new Map([[cause.id, 1]]) },
  };
}

function residualsAt(problem: FitProblem, z: Float64Array, recording: number): Float64Array {
  const { gaugePa } = problem.recordings[recording]!;
  const modelled = new Float64Array(gaugePa.length);
  problem.model(z, recording, modelled);
  return modelled.map((x, k) => gaugePa[k]! - x);
}

function startPoints(parameters: readonly Parameter[], cause: Cause): Float64Array[] {
  const zero = new Float64Array(parameters.length);
  const starts = Object.entries(cause.starts).flatMap(([name, values]) => {
    const i = parameters.findIndex((p) => p.name === name);
    return i < 0 ? [] : values.map((value) => zero.with(i, value));
  });
  return starts.length > 0 ? starts : [zero];
}
