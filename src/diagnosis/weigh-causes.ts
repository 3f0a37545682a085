/** Fits every cause to all recordings and weighs them by evidence: the heart of the finding. */
import type { Car } from '../system/car.ts';
import { applyCause, type Cause, formOf, takingPart } from './causes/catalogue.ts';
import { levenbergMarquardt } from './fit/levenberg-marquardt.ts';
import { gaussianSd, marginalise } from './fit/marginal.ts';
import type { Parameter } from './fit/parameter.ts';
import { FitProblem, type FitRecording } from './fit/problem.ts';
import { FIRST_NOISE } from './likelihood/noise.ts';
import { sensorState } from './likelihood/sensor-state.ts';
import { trimData } from './likelihood/trims.ts';
import type { Prepared } from './prepare.ts';
import { looksSound } from './priors/selection.ts';
import { laplaceLogEvidence } from './weighing/laplace.ts';
import { weighPairs } from './weighing/pairs.ts';
import { parametersOf } from './weighing/parameters-of.ts';
import { COARSE_MARGINAL, FIRST_PASS, SECOND_PASS, WELL_DETERMINED } from './weighing/passes.ts';
import { recentred } from './weighing/recentred.ts';
import { withSampledEvidence } from './weighing/sampled-evidence.ts';
import { settleNoise } from './weighing/settle-noise.ts';
import { carryOver, startPoints } from './weighing/start-points.ts';
import { type Context, weigh } from './weighing/weigh.ts';
import type { Held, Weighed, Weighing } from './weighing/weighed.ts';
import { forSizing, withNoise } from './weighing/with-noise.ts';

/** A first-pass fit this much worse than the best, relative to the residual's size, is not refined. */
const HOPELESS = 40;
/** A fit this much worse than the best [ln] gets a second start. */
const SUSPICIOUS = 3;

/** Beyond this at the start a zero error is tried on top of other causes [Pa], judgement: twice what a sound, open system shows. */
const FAR_FROM_AMBIENT_PA = 160;
const OTHERS_WITH_ZERO_ERROR = 3;

/** Causes within this of the best [ln] lend each other their fits, the best so many lend; gains below the last are none. */
const CONTENDING = 8;
const LENDING = 2;
const MOST_EXCHANGES = 3;
const BETTER = 0.1;

/** Causes further below the best than this [ln] are not worth an integral. */
const WORTH_MARGINAL = 25;

/** What the steps of a weighing share. */
interface Job {
  readonly sound: readonly Parameter[];
  readonly prepared: readonly Prepared[];
  readonly procedures: readonly Prepared['procedure'][];
  /** The causes that have a fit of their own. */
  readonly fitted: readonly Cause[];
  /** By cause, the fits that it has begun from: the same start ends where it ended before. */
  readonly begun: Map<string, Set<Held>>;
  readonly report: (fraction: number, what: string) => void;
  runs: number;
}

function begunFrom(job: Job, form: string): Set<Held> {
  const begun = job.begun.get(form) ?? new Set();
  job.begun.set(form, begun);
  return begun;
}

export function weighCauses(
  car: Car,
  prepared: readonly Prepared[],
  report: (fraction: number, what: string) => void = () => {},
): Weighing {
  const sound = parametersOf(car, prepared);
  const procedures = prepared.map((p) => p.procedure);
  const refuelled = procedures.includes('refuelling');
  const causes = takingPart(procedures);
  const fitted = causes.filter(
    (c) =>
      !c.pressureLike &&
      c.id !== 'sensor_stuck' &&
      (c.id !== 'fill_valve_stuck_open' || refuelled) &&
      !looksSound(procedures, c.id),
  );
  const job: Job = { sound, prepared, procedures, fitted, begun: new Map(), report, runs: 0 };
  const first = firstFits(job);
  const { noise, held: best, runs: noiseRuns } = settleNoise(prepared, bestOf(first), zeroErrorToo(job, first));
  const { recordings } = best.problem;
  job.runs += noiseRuns;
  const fits = refine(job, first, recordings, best);
  fits.set(...recentredBest(job, fits));
  exchange(job, fits);
  const lowest = bestOf(fits).fit.cost;
  let evidences = integrateSizes(job, fits);
  if (bestOf(fits).fit.cost < lowest - SUSPICIOUS) {
    // an integral walked into a better valley: the other causes have to be led there as well
    exchange(job, fits);
    evidences = integrateSizes(job, fits);
  }
  const context: Context = {
    prepared,
    recordings,
    noise,
    states: prepared.map(sensorState),
    trims: prepared.map((p) => trimData(p.recording, p.observations, p.conditions.ambientTemperatureK)),
  };
  const approximated = causes.flatMap((cause): Weighed[] => {
    const like = cause.pressureLike ?? (looksSound(procedures, cause.id) ? 'none' : formOf(cause));
    const held = fits.get(like) ?? (cause.id === 'sensor_stuck' ? fits.get('none') : undefined);
    return held ? [weigh([cause], held, evidences.get(like) ?? laplaceLogEvidence(held.fit), context)] : [];
  });
  const approximatedPairs = weighPairs(sound, approximated, context, (n) => {
    job.runs += n;
  });
  const { weighed, pairs, checks, runs } = withSampledEvidence(approximated, approximatedPairs);
  job.runs += runs;
  return {
    weighed,
    pairs,
    checks,
    noise,
    sizing: forSizing(prepared, noise),
    parameters: sound,
    runs: job.runs,
  };
}

const bestOf = (fits: ReadonlyMap<string, Held>): Held =>
  [...fits.values()].reduce((a, b) => (b.fit.cost < a.fit.cost ? b : a));

/**
 * A recording that begins far from ambient may have a zero error on top of another fault. One of the two alone leaves so much
 * unexplained that it would be taken for noise, under which the pair could no longer show: so the best other cause is fitted with a
 * zero error before the noise is settled.
 */
function zeroErrorToo(job: Job, first: ReadonlyMap<string, Held>): Held | undefined {
  const bias = job.fitted.find((c) => c.id === 'sensor_bias');
  const standing = Math.max(...job.prepared.map((p) => Math.abs(p.observations.gaugePa[0] ?? 0)));
  if (!bias || standing < FAR_FROM_AMBIENT_PA) return undefined;
  const others = job.fitted.filter((c) => c.id !== 'sensor_bias' && c.id !== 'none');
  const tried = others
    .toSorted((a, b) => first.get(formOf(a))!.fit.cost - first.get(formOf(b))!.fit.cost)
    .slice(0, OTHERS_WITH_ZERO_ERROR)
    .map((cause): Held => {
      const { problem: alone } = first.get(formOf(cause))!;
      const problem = new FitProblem(applyCause(job.sound, [cause, bias], job.procedures), alone.recordings);
      const starts = startPoints(problem.parameters, cause, job.procedures.includes('refuelling'), []);
      const offset = problem.parameters.findIndex((p) => p.name === 'offset');
      const initial = problem.parameters.findIndex((p) => p.name === 'initial');
      const fits = starts.map((start) => {
        // the whole standing pressure as zero error, none of it in the tank
        const at = Float64Array.from(start);
        at[offset] = (job.prepared[0]!.observations.gaugePa[0] ?? 0) / problem.parameters[offset]!.sd;
        if (initial >= 0) at[initial] = 0;
        return levenbergMarquardt(problem, at, FIRST_PASS);
      });
      job.runs += problem.runs;
      return { problem, fit: fits.reduce((a, b) => (b.cost < a.cost ? b : a)) };
    });
  return tried.length > 0 ? tried.reduce((a, b) => (b.fit.cost < a.fit.cost ? b : a)) : undefined;
}

/** A quick fit of every cause under a first guess of the noise. */
function firstFits(job: Job): Map<string, Held> {
  const { sound, prepared, procedures, fitted } = job;
  const recordings = withNoise(
    prepared,
    prepared.map(() => FIRST_NOISE),
  );
  const firstReadings = prepared.map((p) => p.observations.gaugePa[0] ?? 0);
  const refuelled = procedures.includes('refuelling');
  const fits = new Map<string, Held>();
  let lowest = Number.POSITIVE_INFINITY;
  fitted.forEach((cause, i) => {
    const problem = new FitProblem(applyCause(sound, [cause], procedures), recordings);
    const settings = {
      ...FIRST_PASS,
      ...(Number.isFinite(lowest) && { hopelessAbove: 1.5 * lowest + HOPELESS, patience: 3 }),
    };
    const tried = startPoints(problem.parameters, cause, refuelled, firstReadings).map((start) =>
      levenbergMarquardt(problem, start, settings),
    );
    const fit = tried.reduce((a, b) => (b.cost < a.cost ? b : a));
    job.runs += problem.runs;
    fits.set(formOf(cause), { problem, fit });
    lowest = Math.min(lowest, fit.cost);
    job.report((0.5 * (i + 1)) / fitted.length, `trying ${cause.id}`);
  });
  return fits;
}

/** The best explanation, without what only a side valley asks of it: it would take all other causes along. */
function recentredBest(job: Job, fits: ReadonlyMap<string, Held>): [string, Held] {
  const best = bestOf(fits);
  const cause = job.fitted.find((c) => fits.get(formOf(c)) === best)!;
  const before = best.problem.runs;
  const held = recentred(best, cause);
  job.runs += best.problem.runs - before;
  return [formOf(cause), held];
}

/** Every cause fitted under the settled noise, from where its quick fit ended and from the best explanation's car and day. */
function refine(
  job: Job,
  first: ReadonlyMap<string, Held>,
  recordings: readonly FitRecording[],
  found: Held,
): Map<string, Held> {
  let best = found;
  const fits = new Map<string, Held>();
  const order = [...job.fitted].sort((a, b) => first.get(formOf(a))!.fit.cost - first.get(formOf(b))!.fit.cost);
  order.forEach((cause, i) => {
    const before = first.get(formOf(cause))!;
    const problem = new FitProblem(before.problem.parameters, recordings);
    const settings = { ...SECOND_PASS, hopelessAbove: best.fit.cost + HOPELESS, patience: 3 };
    let fit = levenbergMarquardt(problem, before.fit.z, settings);
    if (fit.cost > best.fit.cost + SUSPICIOUS) {
      // a poor fit may be a poor start: begin again from the best explanation's car and day
      const other = levenbergMarquardt(problem, carryOver(best, problem.parameters, cause.size), settings);
      begunFrom(job, formOf(cause)).add(best);
      if (other.cost < fit.cost) fit = other;
    }
    job.runs += problem.runs;
    const held = { problem, fit };
    fits.set(formOf(cause), held);
    if (fit.cost < best.fit.cost) best = held;
    job.report(0.5 + (0.4 * (i + 1)) / order.length, 'refining');
  });
  return fits;
}

/**
 * Each cause that contends begins again from where the other contenders ended, until none betters itself: a fit that ended in a side
 * valley must not decide between causes.
 */
function exchange(job: Job, fits: Map<string, Held>): void {
  for (let round = 0; round < MOST_EXCHANGES; round++) {
    const lowest = bestOf(fits).fit.cost;
    const contending = job.fitted
      .map((cause) => ({ cause, form: formOf(cause) }))
      .filter(({ form }) => fits.get(form)!.fit.cost < lowest + (round === 0 ? HOPELESS : CONTENDING))
      .toSorted((a, b) => fits.get(a.form)!.fit.cost - fits.get(b.form)!.fit.cost);
    let isBetter = false;
    for (const { cause, form } of contending) {
      const begun = begunFrom(job, form);
      const farOff = fits.get(form)!.fit.cost > lowest + CONTENDING;
      for (const other of contending.slice(0, farOff ? 1 : LENDING)) {
        const lent = fits.get(other.form)!;
        if (other.form === form || begun.has(lent)) continue;
        begun.add(lent);
        const { problem, fit } = fits.get(form)!;
        const before = problem.runs;
        const again = levenbergMarquardt(problem, carryOver(lent, problem.parameters, cause.size), {
          ...SECOND_PASS,
          hopelessAbove: fit.cost,
          patience: 3,
        });
        job.runs += problem.runs - before;
        if (again.cost > fit.cost - BETTER) continue;
        fits.set(form, { problem, fit: again });
        isBetter = true;
      }
    }
    if (!isBetter) return;
  }
}

/**
 * ln evidence of the causes whose size is so poorly determined that a Gaussian would not do; a better point met on the way
 * replaces the fit.
 */
function integrateSizes(job: Job, fits: Map<string, Held>): Map<string, number> {
  const highest = laplaceLogEvidence(bestOf(fits).fit);
  const evidences = new Map<string, number>();
  for (const cause of job.fitted) {
    const { problem, fit } = fits.get(formOf(cause))!;
    const key = problem.parameters.findIndex((p) => p.name === (cause.size ?? 'leak'));
    if (laplaceLogEvidence(fit) < highest - WORTH_MARGINAL) continue;
    if (gaussianSd(fit.hessian, fit.z.length, key) < WELL_DETERMINED) continue;
    const before = problem.runs;
    const m = marginalise(problem, fit, key, COARSE_MARGINAL);
    job.runs += problem.runs - before;
    evidences.set(formOf(cause), m.logEvidence);
    // the same fit stays the same start for others
    if (m.best !== fit) fits.set(formOf(cause), { problem, fit: m.best });
  }
  return evidences;
}
