/**
 * The fit of one cause alone, with the noise estimated from its own residuals: the path that `weigh-causes.ts` takes
 * for the cause that turns out best. For questions about that cause only, such as whether its intervals are calibrated.
 */
import type { Car } from '../../system/car.ts';
import { applyCause, type Cause } from '../causes/catalogue.ts';
import { estimateNoise, FIRST_NOISE, type Noise, whiteningFor } from '../likelihood/noise.ts';
import type { Posterior } from '../posterior.ts';
import type { Prepared } from '../prepare.ts';
import { carParameters, recordingParameters } from '../priors/nuisances.ts';
import { laplaceLogEvidence, type Weighed, type Weighing } from '../weigh-causes.ts';
import { type Fit, levenbergMarquardt } from './levenberg-marquardt.ts';
import { gaussianSd, marginalise } from './marginal.ts';
import type { Parameter } from './parameter.ts';
import { FitProblem, type FitRecording } from './problem.ts';

/** As in `weigh-causes.ts`. */
const FIRST_PASS = { mostIterations: 8, enough: 1 };
const SECOND_PASS = { mostIterations: 12, enough: 0.05 };
const NOISE_PASSES = 2;
const COARSE_MARGINAL = { spacing: 0.9, widest: 0.6, depth: 4, iterations: 3, reach: 3.5 };
const WELL_DETERMINED = 0.12;

/** All parameters of a job: the car's, then each recording's; changed by a cause where one is given. */
export function parametersOf(car: Car, prepared: readonly Prepared[], cause?: Cause): Parameter[] {
  const sound = [
    ...carParameters(car, prepared[0]!.conditions),
    ...prepared.flatMap((p, i) => recordingParameters(p.shape, i)),
  ];
  return cause
    ? applyCause(
        sound,
        [cause],
        prepared.map((p) => p.procedure),
      )
    : sound;
}

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
  let problem = new FitProblem(parameters, recordingsWith(prepared, noise));
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
    problem = new FitProblem(parameters, recordingsWith(prepared, noise));
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
      recordings: problem.recordings,
      noise,
      parameters: parametersOf(car, prepared),
      runs,
    },
    posterior: { singles: [{ weighed, probability: 1 }], pairs: [], byCause: new Map([[cause.id, 1]]) },
  };
}

function recordingsWith(prepared: readonly Prepared[], noise: readonly Noise[]): FitRecording[] {
  return prepared.map((p, i) => ({
    drive: p.drive,
    gaugePa: p.observations.gaugePa,
    base: p.base,
    whitening: whiteningFor(p.observations, noise[i]!, p.procedure),
  }));
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
