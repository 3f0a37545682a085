/** Fits every cause of a procedure to one run and weighs them by evidence. */
import { diameterFromEffectiveArea } from '../../physics/equivalent-diameter.ts';
import type { PhaseKind } from '../../recording/recording.ts';
import { choleskyFactor, logDeterminant } from '../fit/cholesky.ts';
import { type Fit, levenbergMarquardt } from '../fit/levenberg-marquardt.ts';
import { gaussianSd, logIntegral, marginalise } from '../fit/marginal.ts';
import {
  estimateSlowNoise,
  FIRST_SLOW_NOISE,
  type ObservedChannel,
  type SlowNoise,
  whitenChannel,
} from './observed-channel.ts';
import { type Prior, priorsUnder, type SingleRunCause, setQuantities } from './prior.ts';
import { type ReducedModel, SingleRunProblem } from './problem.ts';

export interface WeighedSimple<Id extends string> {
  readonly id: Id;
  readonly places: readonly string[];
  /** ln evidence; constants common to all causes included alike. */
  readonly logEvidence: number;
  /** Posterior of the hole to ambient: ln of its equivalent diameter in mm (cd 0.61) and log density there. */
  readonly size?: { readonly lnDiameterMm: readonly number[]; readonly logDensity: readonly number[] };
  /** The channel shown, at its observations. */
  readonly timeS: Float64Array;
  readonly recordedGaugePa: Float64Array;
  readonly modelledGaugePa: Float64Array;
  readonly whiteVariance: Float64Array;
  readonly phase: readonly PhaseKind[];
  /** Slow error of the shown channel, one sigma [Pa]. */
  readonly slowPa: number;
  /** Whitened residuals of all channels, in the order of `residualPhase`. */
  readonly residuals: Float64Array;
  readonly residualPhase: readonly PhaseKind[];
  /** Quantities at the most probable point, by the model's own slots. */
  readonly quantities: Float64Array;
}

export interface SingleRun<Id extends string> {
  readonly sound: readonly Prior[];
  readonly base: Float64Array;
  readonly model: ReducedModel;
  /** The first is the one shown. */
  readonly channels: readonly ObservedChannel[];
  readonly causes: readonly SingleRunCause<Id>[];
  /** What a cause says beyond the pressures, ln density. */
  readonly beside?: (id: Id, quantities: Float64Array) => number;
}

const FIRST_PASS = { mostIterations: 8, enough: 0.5 };
const SECOND_PASS = { mostIterations: 14, enough: 0.05 };
const HOPELESS = 80;
/** Causes further below the best than this [ln] are not worth an integral. */
const WORTH_MARGINAL = 14;
const MARGINAL = { spacing: 0.7, widest: 0.5, depth: 6, iterations: 3, reach: 4 };
/** A parameter better determined than this [z] is Gaussian enough for the evidence. */
const WELL_DETERMINED = 0.12;

export function weighSingleRun<Id extends string>(run: SingleRun<Id>): WeighedSimple<Id>[] {
  const { channels, causes } = run;
  let noise: SlowNoise[] = channels.map(() => FIRST_SLOW_NOISE);
  const problemFor = (cause: SingleRunCause<Id>) => {
    const base = Float64Array.from(run.base);
    const states = cause.states ?? [];
    for (const [slot, value] of states) base[slot] = value;
    const priors = priorsUnder(run.sound, cause).filter((p) => !states.some(([slot]) => slot === p.slot));
    return new SingleRunProblem(
      priors,
      base,
      run.model,
      channels,
      channels.map((c, i) => whitenChannel(c, noise[i]!)),
    );
  };

  const starts = new Map<Id, Float64Array>();
  let leader: { cause: SingleRunCause<Id>; fit: Fit } | undefined;
  for (const cause of causes) {
    const problem = problemFor(cause);
    let own: Fit | undefined;
    for (const start of startPoints(problem.priors, cause)) {
      const limit = leader ? 3 * leader.fit.cost + HOPELESS : undefined;
      const fit = levenbergMarquardt(problem, start, {
        ...FIRST_PASS,
        ...(limit !== undefined && { hopelessAbove: limit, patience: 5 }),
      });
      if (!own || fit.cost < own.cost) own = fit;
    }
    starts.set(cause.id, own!.z);
    if (!leader || own!.cost < leader.fit.cost) leader = { cause, fit: own! };
  }

  // noise from the best explanation, the same for all, so that their evidences compare
  for (let pass = 0; pass < 2; pass++) {
    const { cause, fit } = leader!;
    const before = problemFor(cause);
    const modelled = channels.map((c) => new Float64Array(c.observations.timeS.length));
    before.readings(fit.z, modelled);
    noise = channels.map((c, i) =>
      estimateSlowNoise(
        c,
        c.observations.gaugePa.map((x, k) => x - modelled[i]![k]!),
      ),
    );
    leader = { cause, fit: levenbergMarquardt(problemFor(cause), fit.z, SECOND_PASS) };
    starts.set(cause.id, leader.fit.z);
  }

  let lowest = leader!.fit.cost;
  const fits = new Map<Id, { problem: SingleRunProblem; fit: Fit; log: number }>();
  for (const cause of causes) {
    const problem = problemFor(cause);
    const fit = levenbergMarquardt(problem, starts.get(cause.id)!, {
      ...SECOND_PASS,
      hopelessAbove: lowest + HOPELESS,
      patience: 4,
    });
    lowest = Math.min(lowest, fit.cost);
    fits.set(cause.id, { problem, fit, log: laplace(fit) });
  }
  const top = Math.max(...[...fits.values()].map((f) => f.log));
  const normaliser = channels.reduce((s, c, i) => s - 0.5 * whitenChannel(c, noise[i]!).logDeterminant, 0);
  const residualPhase = channels.flatMap((c) => c.observations.phase);
  const shown = channels[0]!.observations;
  return causes.map((cause): WeighedSimple<Id> => {
    const held = fits.get(cause.id)!;
    const { problem } = held;
    let { fit, log } = held;
    let size: WeighedSimple<Id>['size'];
    if (log > top - WORTH_MARGINAL) {
      const key = problem.priors.findIndex((p) => p.name === cause.key);
      const hole = cause.hole === undefined ? -1 : problem.priors.findIndex((p) => p.name === cause.hole);
      const loose = key >= 0 && gaussianSd(fit.hessian, fit.z.length, key) >= WELL_DETERMINED;
      if (loose || (hole >= 0 && hole === key)) {
        const m = marginalise(problem, fit, key, MARGINAL);
        log = logIntegral(m.z, m.logDensity) - 0.5 * Math.log(2 * Math.PI);
        fit = m.best;
        if (hole === key) size = sizeOf(problem.priors[hole]!, m.z, m.logDensity);
      }
      if (hole >= 0 && hole !== key) {
        const m = marginalise(problem, fit, hole, MARGINAL);
        size = sizeOf(problem.priors[hole]!, m.z, m.logDensity);
      }
    }
    const modelled = channels.map((c) => new Float64Array(c.observations.timeS.length));
    problem.readings(fit.z, modelled);
    const quantities = new Float64Array(run.base.length);
    const states = Float64Array.from(run.base);
    for (const [slot, value] of cause.states ?? []) states[slot] = value;
    setQuantities(problem.priors, fit.z, states, quantities);
    return {
      id: cause.id,
      places: cause.places,
      logEvidence: log + normaliser + (run.beside?.(cause.id, quantities) ?? 0),
      ...(size && { size }),
      timeS: shown.timeS,
      recordedGaugePa: shown.gaugePa,
      modelledGaugePa: modelled[0]!,
      whiteVariance: shown.whiteVariance,
      phase: shown.phase,
      slowPa: noise[0]!.slowPa,
      residuals: fit.residuals,
      residualPhase,
      quantities,
    };
  });
}

function sizeOf(p: Prior, z: readonly number[], logDensity: readonly number[]) {
  return {
    lnDiameterMm: z.map((x) => Math.log(diameterFromEffectiveArea(p.centre * Math.exp(p.sd * x)) * 1e3)),
    logDensity,
  };
}

/** Laplace approximation of ln of the integral over the parameters, whose prior is standard normal. */
function laplace(fit: Fit): number {
  const l = Float64Array.from(fit.hessian);
  return choleskyFactor(l, fit.z.length) ? -fit.cost - 0.5 * logDeterminant(l, fit.z.length) : -fit.cost - 1e3;
}

/** Prior means, with each of the cause's own start values in turn. */
function startPoints<Id extends string>(priors: readonly Prior[], cause: SingleRunCause<Id>): Float64Array[] {
  const list: Float64Array[] = [];
  for (const [name, values] of Object.entries(cause.starts)) {
    const i = priors.findIndex((p) => p.name === name);
    if (i < 0) continue;
    for (const v of values) {
      const z = new Float64Array(priors.length);
      z[i] = v;
      list.push(z);
    }
  }
  return list.length > 0 ? list : [new Float64Array(priors.length)];
}
