/** Fits every cause of a procedure to one run and weighs them by evidence. */
import type { PhaseKind } from '../../recording/recording.ts';
import type { Place } from '../finding.ts';
import { choleskyFactor, logDeterminant } from '../fit/cholesky.ts';
import { type Fit, levenbergMarquardt } from '../fit/levenberg-marquardt.ts';
import { gaussianSd, logIntegral, marginalise } from '../fit/marginal.ts';
import { mixSizes, sizeOf } from './mix-sizes.ts';
import {
  estimateSlowNoise,
  FIRST_SLOW_NOISE,
  type ObservedChannel,
  type SlowNoise,
  whitenChannel,
} from './observed-channel.ts';
import { baseUnder, type Prior, priorsUnder, type SingleRunCause, setQuantities } from './prior.ts';
import { type ReducedModel, SingleRunProblem } from './problem.ts';
import { costAt, startPoints, translate } from './start-points.ts';

export interface WeighedSimple<Id extends string> {
  readonly id: Id;
  readonly places: readonly Place[];
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
  /** Start values read off the recording, by the priors of a cause: used instead of the catalogue's. */
  readonly startsFor?: (cause: SingleRunCause<Id>, priors: readonly Prior[]) => readonly Float64Array[] | undefined;
  /** What a cause says beyond the pressures, ln density. */
  readonly beside?: (id: Id, quantities: Float64Array) => number;
}

const FIRST_PASS = { mostIterations: 6, enough: 1 };
const LEADER_PASS = { mostIterations: 20, enough: 0.05 };
const SECOND_PASS = { mostIterations: 12, enough: 0.05 };
/** A fit this many times worse than the best, and this much, is not refined. */
const HOPELESS_TIMES = 6;
const HOPELESS = 150;
/** A start that is better by this [ln] is worth another fit. */
const WORTH_REFIT = 0.5;
/** Causes further below the best than this [ln] are not worth an integral. */
const WORTH_MARGINAL = 9;
const MARGINAL = { spacing: 1, widest: 0.7, depth: 4.5, iterations: 3, reach: 4 };
/** Least spacing of the grid [z]: about 2 % of a diameter. */
const LEAST_SPACING = 0.03;
/** Further below the best than this [ln] a hole that is not the cause's own is not sized. */
const WORTH_SIZE = 5;
/** A parameter better determined than this [z] is Gaussian enough for the evidence. */
const WELL_DETERMINED = 0.12;

interface Fitted<Id extends string> {
  readonly cause: SingleRunCause<Id>;
  readonly problem: SingleRunProblem;
  readonly fit: Fit;
  readonly log: number;
  /** Posterior of the key, and of the hole, on a grid of z. */
  readonly key?: Grid;
  readonly hole?: Grid;
}
/** The posterior of one quantity, the others integrated out, on a grid of its z. */
export interface Grid {
  readonly prior: Prior;
  readonly z: readonly number[];
  readonly logDensity: readonly number[];
}

export function weighSingleRun<Id extends string>(run: SingleRun<Id>): WeighedSimple<Id>[] {
  const { channels } = run;
  const causes = run.causes.filter((c) => c.sharesFitOf === undefined);
  let whitening = channels.map((c) => whitenChannel(c, FIRST_SLOW_NOISE));
  let noise: SlowNoise[] = channels.map(() => FIRST_SLOW_NOISE);
  const problemFor = (cause: SingleRunCause<Id>) =>
    new SingleRunProblem(priorsUnder(run.sound, cause), baseUnder(run.base, cause), run.model, channels, whitening);
  const hopeless = (best: number) => ({ hopelessAbove: HOPELESS_TIMES * best + HOPELESS, patience: 4 });

  const first = new Map<SingleRunCause<Id>, Fit>();
  let leader: { cause: SingleRunCause<Id>; fit: Fit } | undefined;
  for (const cause of causes) {
    const problem = problemFor(cause);
    let own: Fit | undefined;
    for (const start of run.startsFor?.(cause, problem.parameters) ?? startPoints(problem.parameters, cause)) {
      const fit = levenbergMarquardt(problem, start, { ...FIRST_PASS, ...(leader && hopeless(leader.fit.cost)) });
      if (!own || fit.cost < own.cost) own = fit;
    }
    first.set(cause, own!);
    if (!leader || own!.cost < leader.fit.cost) leader = { cause, fit: own! };
  }

  // noise from the best explanation, the same for all, so that their evidences compare
  for (let pass = 0; pass < 2; pass++) {
    const { cause, fit }: { cause: SingleRunCause<Id>; fit: Fit } = leader!;
    const modelled = channels.map((c) => new Float64Array(c.observations.timeS.length));
    problemFor(cause).readings(fit.z, modelled);
    noise = channels.map((c, i) =>
      estimateSlowNoise(
        c,
        c.observations.gaugePa.map((x, k) => x - modelled[i]![k]!),
      ),
    );
    whitening = channels.map((c, i) => whitenChannel(c, noise[i]!));
    leader = { cause, fit: levenbergMarquardt(problemFor(cause), fit.z, LEADER_PASS) };
    first.set(cause, leader.fit);
  }

  const physicalOf = (cause: SingleRunCause<Id>, z: Float64Array) => {
    const q = new Float64Array(run.base.length);
    setQuantities(priorsUnder(run.sound, cause), z, baseUnder(run.base, cause), q);
    return q;
  };
  let lowest = leader!.fit.cost;
  const order = [...causes].sort((a, b) => first.get(a)!.cost - first.get(b)!.cost);
  const second = order.map((cause) => {
    const problem = problemFor(cause);
    // the leader's point, seen through this cause's priors, is often the better start
    const own = first.get(cause)!.z;
    const led = translate(physicalOf(leader!.cause, leader!.fit.z), problem.parameters);
    const start = costAt(problem, led) < costAt(problem, own) ? led : own;
    const fit = levenbergMarquardt(problem, start, { ...SECOND_PASS, ...hopeless(lowest) });
    lowest = Math.min(lowest, fit.cost);
    return { cause, problem, fit, log: laplace(fit) };
  });
  // a fit that stopped short must not lose to a cause with the same physics: the best point is offered to all
  for (let round = 0; round < 2; round++) {
    const best = second.reduce((a, b) => (b.fit.cost < a.fit.cost ? b : a));
    const quantities = physicalOf(best.cause, best.fit.z);
    second.forEach((f, i) => {
      const start = translate(quantities, f.problem.parameters);
      if (f === best || costAt(f.problem, start) > f.fit.cost - WORTH_REFIT) return;
      const fit = levenbergMarquardt(f.problem, start, SECOND_PASS);
      if (fit.cost < f.fit.cost) second[i] = { ...f, fit, log: laplace(fit) };
    });
  }
  const top = Math.max(...second.map((f) => f.log));
  const sources = new Set(run.causes.map((c) => c.sharesFitOf));
  const fitted = second.map((f) =>
    f.log > top - WORTH_MARGINAL ? integrate(f, sources.has(f.cause.form ?? f.cause.id), f.log > top - WORTH_SIZE) : f,
  );
  const shared = run.causes.flatMap((cause): Fitted<Id>[] => {
    if (cause.sharesFitOf === undefined) return [];
    const source = fitted.find((f) => (f.cause.form ?? f.cause.id) === cause.sharesFitOf);
    return source ? [underOtherPrior(source, cause)] : [];
  });

  const all = [...fitted, ...shared];
  const ids = [...new Set(run.causes.map((c) => c.id))];
  const normaliser = whitening.reduce((s, w) => s - 0.5 * w.logDeterminant, 0);
  return ids.map((id) => {
    const forms = all.filter((f) => f.cause.id === id).sort((a, b) => b.log - a.log);
    return weighedFrom(run, forms, normaliser, noise[0]!.slowPa);
  });
}

/**
 * @param always whether another cause needs the grid of the key
 * @param sized whether a hole beside the cause's own fault is worth a grid
 */
function integrate<Id extends string>(f: Fitted<Id>, always: boolean, sized: boolean): Fitted<Id> {
  const { problem, cause } = f;
  const n = f.fit.z.length;
  const index = (name: string | undefined) => problem.parameters.findIndex((p) => p.name === name);
  const key = index(cause.key);
  const hole = index(cause.hole);
  let { fit, log } = f;
  const over = (at: number): Grid => {
    const found = gridOver(problem, fit, at);
    fit = found.best;
    return found.grid;
  };
  const loose = key >= 0 && (always || gaussianSd(fit.hessian, n, key) >= WELL_DETERMINED);
  const keyGrid = loose || (key >= 0 && key === hole) ? over(key) : undefined;
  if (keyGrid) log = logEvidenceOf(keyGrid);
  const holeGrid = hole < 0 ? undefined : hole === key ? keyGrid : sized ? over(hole) : undefined;
  return { cause, problem, fit, log, ...(keyGrid && { key: keyGrid }), ...(holeGrid && { hole: holeGrid }) };
}

/** Posterior of one quantity with the rest refitted at each of its values, and the best fit met on the way. */
export function gridOver(problem: SingleRunProblem, fit: Fit, at: number): { readonly grid: Grid; readonly best: Fit } {
  // a far too sharp fit must not turn the grid into a crawl
  const sd = gaussianSd(fit.hessian, fit.z.length, at);
  const m = marginalise(problem, fit, at, { ...MARGINAL, spacing: Math.max(MARGINAL.spacing, LEAST_SPACING / sd) });
  const grid = { prior: problem.parameters[at]!, z: m.z, logDensity: m.logDensity };
  return { grid, best: m.best.cost < fit.cost ? m.best : fit };
}

/** ln of the integral over all parameters, given the density of one with the rest integrated out. */
export const logEvidenceOf = (g: Grid) => logIntegral(g.z, g.logDensity) - 0.5 * Math.log(2 * Math.PI);

/** The same fit with another prior on its key. */
function underOtherPrior<Id extends string>(source: Fitted<Id>, cause: SingleRunCause<Id>): Fitted<Id> {
  if (!source.key) return { ...source, cause };
  const grid = reweighed(source.key, cause.changes[source.key.prior.name]);
  return { ...source, cause, log: logEvidenceOf(grid), key: grid, ...(cause.hole === cause.key && { hole: grid }) };
}

/** A posterior under a changed prior, by weighing the grid anew. */
export function reweighed(
  { prior, z, logDensity }: Grid,
  change: { readonly centre?: number; readonly sd?: number } | undefined,
): Grid {
  const other = { ...prior, ...change };
  const shift = Math.log(prior.centre / other.centre);
  const otherZ = z.map((x) => (shift + prior.sd * x) / other.sd);
  return {
    prior: other,
    z: otherZ,
    // the density is by z, so the scale of z counts as well
    logDensity: logDensity.map((l, i) => l + 0.5 * z[i]! ** 2 - 0.5 * otherZ[i]! ** 2),
  };
}

function weighedFrom<Id extends string>(
  run: SingleRun<Id>,
  forms: readonly Fitted<Id>[],
  normaliser: number,
  slowPa: number,
): WeighedSimple<Id> {
  const { channels } = run;
  const scored = forms
    .map((f) => {
      const quantities = new Float64Array(run.base.length);
      setQuantities(f.problem.parameters, f.fit.z, baseUnder(run.base, f.cause), quantities);
      const log = f.log + (run.beside?.(f.cause.id, quantities) ?? 0) + formLogShare(run.causes, f.cause);
      return { f, quantities, log };
    })
    .sort((a, b) => b.log - a.log);
  const best = scored[0]!;
  const modelled = channels.map((c) => new Float64Array(c.observations.timeS.length));
  best.f.problem.readings(best.f.fit.z, modelled);
  const shown = channels[0]!.observations;
  const sizes = scored.flatMap(({ f, log }) => (f.hole ? [{ ...sizeOf(f.hole), logWeight: log }] : []));
  const beside = Math.log(scored.reduce((s, x) => s + Math.exp(x.log - best.log), 0));
  return {
    id: best.f.cause.id,
    places: [...new Set(scored.flatMap((x) => (x.log > best.log - WORTH_MARGINAL ? x.f.cause.places : [])))],
    logEvidence: best.log + beside + normaliser,
    ...(sizes.length > 0 && { size: mixSizes(sizes) }),
    timeS: shown.timeS,
    recordedGaugePa: shown.gaugePa,
    modelledGaugePa: modelled[0]!,
    whiteVariance: shown.whiteVariance,
    phase: shown.phase,
    slowPa,
    residuals: best.f.fit.residuals,
    residualPhase: channels.flatMap((c) => c.observations.phase),
    quantities: best.quantities,
  };
}

/** ln of the share that a form has of its cause. */
export function formLogShare<Id extends string>(
  causes: readonly SingleRunCause<Id>[],
  cause: SingleRunCause<Id>,
): number {
  const all = causes.reduce((s, c) => s + (c.id === cause.id ? (c.weight ?? 1) : 0), 0);
  return Math.log((cause.weight ?? 1) / all);
}

/** Laplace approximation of ln of the integral over the parameters, whose prior is standard normal. */
function laplace(fit: Fit): number {
  const l = Float64Array.from(fit.hessian);
  return choleskyFactor(l, fit.z.length) ? -fit.cost - 0.5 * logDeterminant(l, fit.z.length) : -fit.cost - 1e3;
}
