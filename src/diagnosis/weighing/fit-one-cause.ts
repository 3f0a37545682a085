/**
 * The fit of one cause alone, with the noise estimated from its own residuals: the path that `weigh-causes.ts` takes
 * for the cause that turns out best. For questions about that cause only, such as whether its intervals are calibrated.
 */
import type { Car } from '../../system/car.ts';
import type { Cause } from '../causes/catalogue.ts';
import { levenbergMarquardt } from '../fit/levenberg-marquardt.ts';
import { gaussianSd, marginalise } from '../fit/marginal.ts';
import { FitProblem } from '../fit/problem.ts';
import { FIRST_NOISE } from '../likelihood/noise.ts';
import type { Posterior } from '../posterior.ts';
import type { Prepared } from '../prepare.ts';
import { laplaceLogEvidence } from './laplace.ts';
import { parametersOf } from './parameters-of.ts';
import { COARSE_MARGINAL, FIRST_PASS, SECOND_PASS, WELL_DETERMINED } from './passes.ts';
import { recentred } from './recentred.ts';
import { settleNoise } from './settle-noise.ts';
import { startPoints } from './start-points.ts';
import type { Weighed, Weighing } from './weighed.ts';
import { forSizing, logNormaliser, withNoise } from './with-noise.ts';

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
  const unsettled = new FitProblem(
    parameters,
    withNoise(
      prepared,
      prepared.map(() => FIRST_NOISE),
    ),
  );
  const refuelled = prepared.some((p) => p.procedure === 'refuelling');
  const firstReadings = prepared.map((p) => p.observations.gaugePa[0] ?? 0);
  const first = startPoints(parameters, cause, refuelled, firstReadings)
    .map((start) => levenbergMarquardt(unsettled, start, FIRST_PASS))
    .reduce((a, b) => (b.cost < a.cost ? b : a));
  const settled = settleNoise(prepared, { problem: unsettled, fit: first });
  const { problem, fit } = settled.held;
  let runs = unsettled.runs + settled.runs;
  const before = problem.runs;
  const again = levenbergMarquardt(problem, first.z, SECOND_PASS);
  let best = recentred({ problem, fit: again.cost < fit.cost ? again : fit }, cause).fit;
  let logEvidence = laplaceLogEvidence(best);
  const sizeIndex = parameters.findIndex((p) => p.name === cause.size);
  if (gaussianSd(best.hessian, parameters.length, sizeIndex) >= WELL_DETERMINED) {
    const m = marginalise(problem, best, sizeIndex, COARSE_MARGINAL);
    logEvidence = m.logEvidence;
    best = m.best;
  }
  runs += problem.runs - before;
  const pressure = logEvidence + logNormaliser(problem.recordings);
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
      sizing: forSizing(prepared, settled.noise),
      noise: settled.noise,
      parameters: parametersOf(car, prepared),
      runs,
    },
    posterior: { singles: [{ weighed, probability: 1 }], pairs: [], byCause: new Map([[cause.id, 1]]) },
  };
}
