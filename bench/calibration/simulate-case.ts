/**
 * One recording drawn from the very model that the finding fits: parameters from their priors, the two-space model,
 * the noise and the allowances of the noise model.
 *
 * As in a car the module ends the draw on its own reading, errors included: what ends it is then seen by the finding as
 * well, and the length of the draw tells nothing beyond the readings.
 */
import { CATALOGUE, type Cause } from '../../src/diagnosis/causes/catalogue.ts';
import { fillQuantities, parameterValue } from '../../src/diagnosis/fit/parameter.ts';
import { allowanceFor } from '../../src/diagnosis/likelihood/noise.ts';
import type { Observations } from '../../src/diagnosis/likelihood/observations.ts';
import { buildDrive } from '../../src/diagnosis/model/build-drive.ts';
import { commandChanges } from '../../src/diagnosis/model/command-changes.ts';
import { QUANTITY_COUNT } from '../../src/diagnosis/model/quantities.ts';
import { runTwoSpace } from '../../src/diagnosis/model/two-space.ts';
import { type Prepared, prepare } from '../../src/diagnosis/prepare.ts';
import { NEUTRAL } from '../../src/diagnosis/size-contexts.ts';
import { parametersOf } from '../../src/diagnosis/weighing/parameters-of.ts';
import { diameterFromEffectiveArea } from '../../src/physics/equivalent-diameter.ts';
import { findPhases } from '../../src/recording/phases.ts';
import type { Recording } from '../../src/recording/recording.ts';
import { type RandomStream, randomStream } from '../../src/simulation/random.ts';
import type { Car } from '../../src/system/car.ts';
import { type CarAndDay, drawCarAndDay } from './draw-car.ts';

/** The cause that is fitted for the noise, and the size as it is asked for afterwards: a hole of the neutral prior. */
export const LEAK: Cause = CATALOGUE.find((c) => c.id === 'leak' && c.size === 'leak')!;
const HOLE: Cause = { id: 'leak', size: 'leak', changes: { leak: NEUTRAL }, starts: {}, places: [] };

export interface CalibrationCase {
  readonly car: Car;
  readonly prepared: Prepared;
  readonly day: CarAndDay;
  readonly trueZ: Float64Array;
  readonly trueDiameterMm: number;
  readonly targetReached: boolean;
}

/** Scatter of the sample times as a share of the interval. */
const JITTER = 0.04;
/** Most times that the end of the draw is looked for again, as the purge valve's drift stretches with the draw. */
const MOST_TURNS = 8;
/** Random streams of a case: car and day, parameters, sample times and white noise, then one for each phase. */
const STREAMS = 16;
const PHASE_STREAMS = ['baseline', 'draw', 'settle', 'hold', 'release', 'rest'];

export function simulateCase(seed: number, index: number): CalibrationCase {
  const stream = (k: number) => randomStream(seed, index * STREAMS + k);
  const day = drawCarAndDay(stream(0));
  const times = sampleTimes(day, stream(2));
  const startS = day.baselineS;
  const whole = layOut(day, times, startS, startS + day.timeOutS);
  const parameters = parametersOf(day.car, [whole], HOLE);
  const normal = stream(1);
  const trueZ = Float64Array.from(parameters, () => normal.normal());
  const read = (p: Prepared, depthPa: number | undefined) => readings(p, parameters, trueZ, day, depthPa, stream);

  let prepared = whole;
  let gaugePa = read(whole, -day.targetGaugePa);
  let endS = startS + day.timeOutS;
  let targetReached = false;
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const { timeS } = prepared.recording;
    // beyond the end found so far nothing draws any more: the next turn lets the draw run on a little and looks again
    const reached = timeS.findIndex((t, i) => t > startS + 1 && t <= endS + 1 && gaugePa[i]! <= day.targetGaugePa);
    if (turn === 0) targetReached = reached >= 0;
    if (!targetReached) break;
    const found = reached >= 0 ? timeS[reached]! + 0.5 / day.rateHz : endS + 0.5;
    if (turn > 0 && Math.abs(found - endS) < 0.9 / day.rateHz) break;
    endS = found;
    prepared = layOut(day, times, startS, endS);
    gaugePa = read(prepared, -day.targetGaugePa);
  }
  if (!targetReached) gaugePa = read(prepared, undefined);
  const channels = { ...prepared.recording.channels, tankPressureGaugePa: gaugePa };
  const size = parameters.findIndex((p) => p.name === HOLE.size);
  return {
    car: day.car,
    prepared: prepareDraw(day.car, { ...prepared.recording, channels }),
    day,
    trueZ,
    trueDiameterMm: 1e3 * diameterFromEffectiveArea(parameterValue(parameters[size]!, trueZ[size]!)),
    targetReached,
  };
}

function sampleTimes(day: CarAndDay, random: RandomStream): Float64Array {
  const longest = day.baselineS + day.timeOutS + day.holdS + day.releaseS + 3;
  return Float64Array.from({ length: Math.ceil(longest * day.rateHz) }, (_, i) => {
    const at = (i + JITTER * random.normal()) / day.rateHz;
    return i === 0 ? 0 : at;
  });
}

const prepareDraw = (car: Car, r: Recording) =>
  prepare(car, r, 'vacuum-draw', findPhases(r, undefined, { kind: 'vacuum-draw', reasons: [] }));

/** Everything but the readings. */
function layOut(day: CarAndDay, times: Float64Array, startS: number, endS: number): Prepared {
  const openS = endS + day.holdS;
  const timeS = times.filter((t) => t <= openS + day.releaseS);
  const all = (x: number) => new Float64Array(timeS.length).fill(x);
  return prepareDraw(day.car, {
    label: 'drawn recording',
    timeS,
    channels: {
      tankPressureGaugePa: all(0),
      purgeDuty: timeS.map((t) => (t > startS && t < endS ? day.duty : 0)),
      ventClosed: timeS.map((t) => (t > startS && t < openS ? 1 : 0)),
      fuelLevel: all(day.fuelLevel),
      ambientTemperatureK: all(day.ambientTemperatureK),
      ...(day.fuelTemperatureK !== undefined && { fuelTemperatureK: all(day.fuelTemperatureK) }),
      barometricPa: all(day.barometricPa),
      manifoldAbsPa: all(day.manifoldAbsPa),
      engineSpeedRpm: all(day.engineSpeedRpm),
    },
    notes: { procedure: 'vacuum-draw', drawTargetGaugePa: day.targetGaugePa, drawTimeOutS: day.timeOutS },
  });
}

/** Model readings at every sample, with the errors that the noise model tells of; depth absent: what the model reaches. */
function readings(
  p: Prepared,
  parameters: ReturnType<typeof parametersOf>,
  z: Float64Array,
  day: CarAndDay,
  depthPa: number | undefined,
  stream: (k: number) => RandomStream,
): Float64Array {
  const { timeS } = p.recording;
  const clean = cleanReadings(p, parameters, z);
  const bins = binOfSample(timeS, p.observations);
  const depth = depthPa ?? clean.reduce((most, x) => Math.max(most, Math.abs(x - clean[0]!)), 0);
  const error = binErrors(p, day, depth, stream);
  const white = stream(3);
  const { low, high } = p.clip;
  return clean.map((x, i) => {
    const noisy = x + error[bins[i]!]! + day.noisePa * white.normal();
    const shown = Math.min(high, Math.max(low, noisy));
    return day.stepPa > 0 ? day.stepPa * Math.round(shown / day.stepPa) : shown;
  });
}

function cleanReadings(p: Prepared, parameters: ReturnType<typeof parametersOf>, z: Float64Array): Float64Array {
  const { timeS } = p.recording;
  const changes = commandChanges(p.recording);
  const movable = changes.filter((c, i) => changes.findIndex((o) => Math.abs(o.timeS - c.timeS) < 1e-9) === i);
  const draw = p.phases.find((f) => f.kind === 'draw')!;
  const drive = buildDrive(p.recording, p.conditions.ambientAbsPa, {
    observationTimesS: timeS,
    changes,
    movable,
    longestStepS: (s) => (s < 2 ? 0.1 : s < 20 ? 0.25 : 0.5),
    warmKnots: p.shape.warmKnots,
    draw: { fromS: draw.fromS, toS: draw.toS },
    ambientAbsPa: p.drive.ambientAbsPa,
    ambientTemperatureK: p.drive.ambientTemperatureK,
    tankTemperatureK: p.drive.tankTemperatureK,
    vapourSensitivityPerK: p.drive.vapourSensitivityPerK,
    clipLowGaugePa: p.clip.low,
    clipHighGaugePa: p.clip.high,
  });
  const q = new Float64Array(QUANTITY_COUNT);
  fillQuantities(parameters, z, 0, p.base, q);
  const clean = new Float64Array(timeS.length);
  runTwoSpace(q, drive, clean);
  return clean;
}

/** Slow error and rough white error of every bin; each phase has its own stream, so that a longer draw begins alike. */
function binErrors(p: Prepared, day: CarAndDay, depthPa: number, stream: (k: number) => RandomStream): Float64Array {
  const o = p.observations;
  const n = o.timeS.length;
  const gaugePa = new Float64Array(n);
  gaugePa[n - 1] = -depthPa;
  const whiteVariance = new Float64Array(n);
  const noise = { whiteScale: 1, slowPa: day.slowPa, slowS: day.slowS, roughness: 1 };
  const a = allowanceFor({ ...o, gaugePa, whiteVariance }, noise, 'vacuum-draw');
  const streams = new Map<string, RandomStream>();
  const error = new Float64Array(n);
  let unit = 0;
  for (let k = 0; k < n; k++) {
    const phase = o.phase[k]!;
    const random = streams.get(phase) ?? stream(4 + PHASE_STREAMS.indexOf(phase));
    streams.set(phase, random);
    const f = k === 0 || a.fresh[k] === 1 ? 0 : Math.exp(-(o.timeS[k]! - o.timeS[k - 1]!) / a.slowS[k]!);
    // a process of unit size: where the allowance shrinks, the error that stands shrinks with it
    unit = f * unit + Math.sqrt(1 - f * f) * random.normal();
    error[k] = a.slowPa[k]! * unit + Math.sqrt(a.variance[k]!) * random.normal();
  }
  return error;
}

/** Which bin each sample was averaged into: bins follow each other, so the running mean meets each bin's time once. */
function binOfSample(timeS: Float64Array, o: Observations): Int32Array {
  const bins = new Int32Array(timeS.length);
  let bin = 0;
  let sum = 0;
  let count = 0;
  for (let i = 0; i < timeS.length; i++) {
    sum += timeS[i]!;
    count++;
    bins[i] = bin;
    if (sum / count >= o.timeS[bin]! - 1e-9) {
      bin = Math.min(bin + 1, o.timeS.length - 1);
      sum = 0;
      count = 0;
    }
  }
  return bins;
}
