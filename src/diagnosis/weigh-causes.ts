/** Fits every cause to all recordings and weighs them by evidence: the heart of the finding. */
import type { Car } from '../system/car.ts';
import { applyCause, CATALOGUE, type Cause, formOf } from './causes/catalogue.ts';
import type { CauseId } from './finding.ts';
import { choleskyFactor, logDeterminant } from './fit/cholesky.ts';
import { type Fit, levenbergMarquardt } from './fit/levenberg-marquardt.ts';
import { gaussianSd, marginalise } from './fit/marginal.ts';
import { fillQuantities, type Parameter, parameterPosition, parameterValue } from './fit/parameter.ts';
import { FitProblem, type FitRecording } from './fit/problem.ts';
import { estimateNoise, FIRST_NOISE, type Noise, whiteningFor } from './likelihood/noise.ts';
import { constantLogEvidence, type SensorState, sensorState } from './likelihood/sensor-state.ts';
import { fillingLogDensity } from './likelihood/shut-offs.ts';
import { type TrimData, trimData, trimLogEvidence, VAPOUR_SHARE } from './likelihood/trims.ts';
import { QUANTITY_COUNT } from './model/quantities.ts';
import { runTwoSpace } from './model/two-space.ts';
import type { Prepared } from './prepare.ts';
import { carParameters, recordingParameters } from './priors/nuisances.ts';
import { looksSound } from './priors/selection.ts';

export interface Weighed {
  readonly id: CauseId;
  readonly causes: readonly Cause[];
  readonly problem: FitProblem;
  readonly fit: Fit;
  /** ln evidence of pressure, trims and sensor together; constants common to all causes included alike. */
  readonly logEvidence: number;
  /** Parameter that carries the size of the hole to ambient under this cause. */
  readonly sizeIndex: number;
  readonly parts: { readonly pressure: number; readonly trims: number; readonly sensor: number };
}

export interface Weighing {
  readonly weighed: readonly Weighed[];
  /** Two faults at once; `causes` names both. */
  readonly pairs: readonly Weighed[];
  readonly recordings: readonly FitRecording[];
  readonly noise: readonly Noise[];
  readonly parameters: readonly Parameter[];
  readonly runs: number;
}

const FIRST_PASS = { mostIterations: 8, enough: 1 };
/** A second fault must better the fit by this much [ln] to be followed up. */
const WORTH_A_PAIR = 1.5;
const PAIR_PASS = { mostIterations: 8, enough: 0.2 };
const SECOND_PASS = { mostIterations: 12, enough: 0.05 };
/** A first-pass fit this much worse than the best, relative to the residual's size, is not refined. */
const HOPELESS = 40;
/** A fit this much worse than the best [ln] gets a second start. */
const SUSPICIOUS = 3;

/** Causes further below the best than this [ln] are not worth an integral. */
const WORTH_MARGINAL = 25;
const COARSE_MARGINAL = { spacing: 0.9, widest: 0.6, depth: 4, iterations: 3, reach: 3.5 };
/** A parameter better determined than this [z] is Gaussian enough. */
const WELL_DETERMINED = 0.12;

export function weighCauses(
  car: Car,
  prepared: readonly Prepared[],
  report: (fraction: number, what: string) => void = () => {},
): Weighing {
  const sound: Parameter[] = [
    ...carParameters(car, prepared[0]!.conditions),
    ...prepared.flatMap((p, i) => recordingParameters(p.shape, i)),
  ];
  const firstReadings = prepared.map((p) => p.observations.gaugePa[0] ?? 0);
  const refuelled = prepared.some((p) => p.procedure === 'refuelling');
  const procedures = prepared.map((p) => p.procedure);
  const fitted = CATALOGUE.filter(
    (c) =>
      !c.pressureLike &&
      c.id !== 'sensor_stuck' &&
      (c.id !== 'fill_valve_stuck_open' || refuelled) &&
      !looksSound(procedures, c.id),
  );

  let noise = prepared.map(() => FIRST_NOISE);
  let recordings = withNoise(prepared, noise);
  const fits = new Map<string, Held>();
  let runs = 0;
  let best: { problem: FitProblem; fit: Fit } | undefined;
  fitted.forEach((cause, i) => {
    const problem = new FitProblem(applyCause(sound, [cause], procedures), recordings);
    const starts = startPoints(problem.parameters, cause, refuelled, firstReadings);
    let own: Fit | undefined;
    for (const start of starts) {
      const limit = best ? 1.5 * best.fit.cost + HOPELESS : undefined;
      const fit = levenbergMarquardt(problem, start, {
        ...FIRST_PASS,
        ...(limit !== undefined && { hopelessAbove: limit, patience: 3 }),
      });
      if (!own || fit.cost < own.cost) own = fit;
    }
    runs += problem.runs;
    fits.set(formOf(cause), { problem, fit: own! });
    if (!best || own!.cost < best.fit.cost) best = { problem, fit: own! };
    report((0.5 * (i + 1)) / fitted.length, `trying ${cause.id}`);
  });

  // noise from the best explanation, the same for all, so that their evidences compare
  for (let pass = 0; pass < 2; pass++) {
    const found = best!;
    noise = prepared.map((p, r) => {
      const m = new Float64Array(p.observations.timeS.length);
      found.problem.model(found.fit.z, r, m);
      return estimateNoise(
        p.observations,
        m.map((x, k) => p.observations.gaugePa[k]! - x),
        p.procedure,
      );
    });
    recordings = withNoise(prepared, noise);
    const problem = new FitProblem(found.problem.parameters, recordings);
    best = { problem, fit: levenbergMarquardt(problem, found.fit.z, SECOND_PASS) };
    runs += problem.runs;
  }
  let lowest = best!.fit.cost;
  const order = [...fitted].sort((a, b) => fits.get(formOf(a))!.fit.cost - fits.get(formOf(b))!.fit.cost);
  order.forEach((cause, i) => {
    const before = fits.get(formOf(cause))!;
    const problem = new FitProblem(before.problem.parameters, recordings);
    const settings = { ...SECOND_PASS, hopelessAbove: lowest + HOPELESS, patience: 3 };
    let fit = levenbergMarquardt(problem, before.fit.z, settings);
    if (fit.cost > lowest + SUSPICIOUS) {
      // a poor fit may be a poor start: begin again from the best explanation's car and day
      const other = levenbergMarquardt(problem, carryOver(best!, problem.parameters), settings);
      if (other.cost < fit.cost) fit = other;
    }
    runs += problem.runs;
    fits.set(formOf(cause), { problem, fit });
    if (fit.cost < lowest) {
      lowest = fit.cost;
      best = { problem, fit };
    }
    report(0.5 + (0.4 * (i + 1)) / order.length, 'refining');
  });

  const evidences = new Map<string, number>();
  for (const cause of fitted) {
    const { problem, fit } = fits.get(formOf(cause))!;
    const key = problem.parameters.findIndex((p) => p.name === (cause.size ?? 'leak'));
    if (laplaceLogEvidence(fit) < laplaceLogEvidence(best!.fit) - WORTH_MARGINAL) continue;
    if (gaussianSd(fit.hessian, fit.z.length, key) < WELL_DETERMINED) continue;
    const before = problem.runs;
    const m = marginalise(problem, fit, key, COARSE_MARGINAL);
    runs += problem.runs - before;
    evidences.set(formOf(cause), m.logEvidence);
    fits.set(formOf(cause), { problem, fit: m.best });
  }

  const context: Context = {
    prepared,
    recordings,
    noise,
    states: prepared.map(sensorState),
    trims: prepared.map((p) => trimData(p.recording, p.observations, p.conditions.ambientTemperatureK)),
  };
  const weighed = CATALOGUE.flatMap((cause): Weighed[] => {
    const like = cause.pressureLike ?? (looksSound(procedures, cause.id) ? 'none' : formOf(cause));
    const held = fits.get(like) ?? (cause.id === 'sensor_stuck' ? fits.get('none') : undefined);
    return held ? [weigh([cause], held, evidences.get(like) ?? laplaceLogEvidence(held.fit), context)] : [];
  });
  const pairs = weighPairs(sound, weighed, context, (n) => {
    runs += n;
  });
  return { weighed, pairs, recordings, noise, parameters: sound, runs };
}

/** What the weighing of a fit needs beside the fit. */
interface Context {
  readonly prepared: readonly Prepared[];
  readonly recordings: readonly FitRecording[];
  readonly noise: readonly Noise[];
  readonly states: readonly SensorState[];
  readonly trims: readonly (TrimData | undefined)[];
}

interface Held {
  readonly problem: FitProblem;
  readonly fit: Fit;
}

/** Adds to the fit's own evidence what trims, sensor and nozzle say of the causes together. */
function weigh(causes: readonly Cause[], held: Held, fitLogEvidence: number, c: Context): Weighed {
  const is = (id: CauseId) => causes.some((x) => x.id === id);
  let pressure = fitLogEvidence + c.recordings.reduce((s, r) => s - 0.5 * r.whitening.logDeterminant, 0);
  let sensor = c.states.reduce((s, x) => s + (is('sensor_noisy') ? x.noisy : x.sound), 0);
  if (is('sensor_stuck')) {
    pressure = c.prepared.reduce((s, p, r) => s + constantLogEvidence(p, c.noise[r]!), 0);
    sensor = c.states.reduce((s, x) => s + x.frozen, 0);
  }
  const share = is('canister_saturated') ? VAPOUR_SHARE.saturated : VAPOUR_SHARE.healthy;
  const trims = c.prepared.reduce((s, p, r) => s + trimsOf(held, p, r, c.trims[r], share), 0);
  const filling = c.prepared.reduce((s, p) => s + Math.max(...causes.map((x) => fillingLogDensity(p, x.id))), 0);
  const size = causes.some((x) => x.size === 'ventShut') ? 'ventShut' : 'leak';
  return {
    id: causes[0]!.id,
    causes,
    problem: held.problem,
    fit: held.fit,
    logEvidence: pressure + sensor + trims + filling,
    sizeIndex: held.problem.parameters.findIndex((x) => x.name === size),
    parts: { pressure, trims, sensor },
  };
}

/** Faults that are tried on top of the best single ones. */
const SECOND_FAULTS: readonly CauseId[] = [
  'sensor_bias',
  'leak',
  'vent_restricted',
  'purge_leak',
  'vent_leak',
  'canister_saturated',
  'purge_stuck_closed',
];
const FIRST_FAULTS = 2;

/** Two faults at once: the best single causes with each other fault on top, fitted from where the single fit ended. */
function weighPairs(
  sound: readonly Parameter[],
  weighed: readonly Weighed[],
  context: Context,
  ran: (runs: number) => void,
): Weighed[] {
  const best = [...weighed]
    .filter((w) => w.id !== 'none' && w.id !== 'sensor_stuck')
    .sort((a, b) => b.logEvidence - a.logEvidence)
    .slice(0, FIRST_FAULTS);
  const done = new Set<string>();
  return best.flatMap((first) =>
    SECOND_FAULTS.flatMap((id): Weighed[] => {
      const second = CATALOGUE.find((c) => c.id === id)!;
      const own = first.causes[0]!;
      const name = [own.id, id].sort().join('+');
      if (id === own.id || done.has(name) || clash(own, second)) return [];
      if (
        looksSound(
          context.prepared.map((p) => p.procedure),
          id,
        )
      )
        return [];
      done.add(name);
      if (second.pressureLike) {
        const alike = first.logEvidence - first.parts.trims - first.parts.sensor;
        const both = weigh([own, second], first, 0, context);
        return [{ ...both, logEvidence: alike + both.parts.trims + both.parts.sensor }];
      }
      const problem = new FitProblem(
        applyCause(
          sound,
          [own, second],
          context.prepared.map((p) => p.procedure),
        ),
        context.recordings,
      );
      const start = Float64Array.from(first.fit.z);
      for (const changed of Object.keys(second.changes)) {
        const i = problem.parameters.findIndex((p) => p.name === changed);
        if (i >= 0) start[i] = 0;
      }
      const fit = levenbergMarquardt(problem, start, {
        ...PAIR_PASS,
        hopelessAbove: first.fit.cost - WORTH_A_PAIR,
        patience: 3,
      });
      ran(problem.runs);
      return [weigh([own, second], { problem, fit }, laplaceLogEvidence(fit), context)];
    }),
  );
}

/** Two causes that set the same part cannot be there at once; nor can two leaks be told from one. */
function clash(a: Cause, b: Cause): boolean {
  if (Object.keys(a.changes).some((k) => k !== 'initial' && k in b.changes)) return true;
  const holes: readonly CauseId[] = ['leak', 'gross_leak', 'vent_leak'];
  return holes.includes(a.id) && holes.includes(b.id);
}

function withNoise(prepared: readonly Prepared[], noise: readonly Noise[]): FitRecording[] {
  return prepared.map((p, i) => ({
    drive: p.drive,
    gaugePa: p.observations.gaugePa,
    base: p.base,
    whitening: whiteningFor(p.observations, noise[i]!, p.procedure),
  }));
}

/** Parameter values of one fit in the coordinates of another cause, where its own priors reach. */
function carryOver(from: Held, parameters: readonly Parameter[]): Float64Array {
  return Float64Array.from(parameters, (p, i) => {
    const own = from.problem.parameters[i]!;
    const z = from.fit.z[i]!;
    if (own.centre === p.centre && own.sd === p.sd) return z;
    return Math.max(-2, Math.min(2, parameterPosition(p, parameterValue(own, z))));
  });
}

/** Prior means, with each of the cause's own start values in turn. */
function startPoints(
  parameters: readonly Parameter[],
  cause: Cause,
  refuelled: boolean,
  firstReadings: readonly number[],
): Float64Array[] {
  const zero = new Float64Array(parameters.length);
  if (cause.changes['initial']) {
    // a system that cannot breathe starts with what it holds
    parameters.forEach((p, i) => {
      if (p.name === 'initial') zero[i] = parameterPosition(p, firstReadings[p.recording] ?? 0);
    });
  }
  const list: Float64Array[] = [];
  for (const [name, values] of Object.entries(cause.starts)) {
    const i = parameters.findIndex((p) => p.name === name);
    if (i < 0) continue;
    for (const v of values) {
      const z = Float64Array.from(zero);
      z[i] = v;
      list.push(z);
    }
  }
  if (list.length === 0) list.push(zero);
  if (!refuelled) return list;
  // the plateau of a filling hangs on the two passages in series: try them wide as well
  return list.flatMap((z) => {
    const wide = Float64Array.from(z);
    for (const name of ['ventOpen', 'pipe']) {
      const i = parameters.findIndex((p) => p.name === name);
      if (i >= 0 && wide[i] === 0) wide[i] = 1;
    }
    return [z, wide];
  });
}

/** Laplace approximation of ln of the integral over the parameters (their prior is standard normal). */
export function laplaceLogEvidence(fit: Fit): number {
  const n = fit.z.length;
  const l = Float64Array.from(fit.hessian);
  if (!choleskyFactor(l, n)) return -fit.cost - 1e3;
  return -fit.cost - 0.5 * logDeterminant(l, n);
}

function trimsOf(
  held: Held,
  p: Prepared,
  recording: number,
  data: TrimData | undefined,
  share: { readonly centre: number; readonly sd: number },
): number {
  if (!data) return 0;
  const q = new Float64Array(QUANTITY_COUNT);
  fillQuantities(held.problem.parameters, held.fit.z, recording, p.base, q);
  const n = p.observations.timeS.length;
  const flows = { purge: new Float64Array(n), vapourFromTank: new Float64Array(n) };
  runTwoSpace(q, p.drive, new Float64Array(n), flows);
  return trimLogEvidence(data, p.observations.timeS, flows, share);
}
