/** One pressure channel of a run as observations, with what a reduced model may miss of it. */
import type { ChannelName, Phase, Recording } from '../../recording/recording.ts';
import { extremes, type Rails } from '../likelihood/found-rails.ts';
import {
  type BinWidth,
  characterise,
  type Observations,
  observe,
  type SensorCharacter,
} from '../likelihood/observations.ts';
import { Whitening } from '../likelihood/whitening.ts';

export interface ObservedChannel {
  readonly channel: ChannelName;
  readonly observations: Observations;
  readonly rails: Rails;
  readonly character: SensorCharacter;
  /** Reading at the start, once the sensor has settled [Pa gauge]. */
  readonly startPa: number;
  /** Variance beyond the sensor's, where the moment of a command is not known well enough [Pa2]. */
  readonly extraVariance: Float64Array;
  /** Slow error that the model is granted at each observation [Pa]. */
  readonly slowAllowancePa: Float64Array;
  /** Slow error that it is granted everywhere [Pa]. */
  readonly modelErrorPa: number;
}

/** Slow error common to a channel: size and correlation time, found from residuals. */
export interface SlowNoise {
  readonly slowPa: number;
  readonly slowS: number;
}
export const FIRST_SLOW_NOISE: SlowNoise = { slowPa: 4, slowS: 10 };

/** A sensor stands at its rail when so large a share of its readings is its extreme to the last digit. Judgement. */
export const RAIL_SHARE = 0.015;
/** And when more than this share of the readings have a value of their own. Judgement. */
export const FINE_SHARE = 0.2;
/** A command acts within its sample gap and this much more [s]; the share of the step that is then uncertain. Judgement. */
const ACT_S = 0.5;
const ACT_SHARE = 0.5;
/** Time that a reading needs after the module wakes [s], judgement. */
const WAKE_S = 2;
/** Later on the model is granted this share of the step, white and slow, fading within [s]. Judgement. */
const ROUGH_SHARE = 0.005;
const ROUGH_S = 3;
const STEP_SHARE = 0.02;
const FADE_S = 15;
/** The error that a model is granted everywhere lasts so long [s]. Judgement. */
const MODEL_S = 60;

/** Where the readings themselves stop. */
export function findRails(p: Float64Array): Rails {
  const { low, high } = extremes(p);
  let atLow = 0;
  let atHigh = 0;
  let inside = 0;
  for (const x of p) {
    if (x === low) atLow++;
    else if (x === high) atHigh++;
    else if (Number.isFinite(x)) inside++;
  }
  const most = RAIL_SHARE * p.length;
  // a coarse or standing channel repeats every value: only an extreme amid finer readings is a rail
  const values = new Set(p).size;
  const fine = inside > 0 && values > FINE_SHARE * p.length;
  return {
    low: fine && atLow > most ? low : Number.NEGATIVE_INFINITY,
    high: fine && atHigh > most ? high : Number.POSITIVE_INFINITY,
  };
}

/** Makes observations of a channel: from the samples, or from what is kept of them. */
export type ObserveChannel = (
  recording: Recording,
  channel: ChannelName,
  phases: readonly Phase[],
  changesS: readonly number[],
  width: BinWidth,
) => ObservedChannel | undefined;

/** @returns undefined where the recording has no such channel, or nothing in it */
export function observeChannel(
  recording: Recording,
  channel: ChannelName,
  phases: readonly Phase[],
  changesS: readonly number[],
  width: BinWidth,
): ObservedChannel | undefined {
  const p = recording.channels[channel];
  if (!p?.some(Number.isFinite)) return undefined;
  const rails = findRails(p);
  const character = characterise(recording.timeS, p, rails);
  const alone: Recording = { ...recording, channels: { tankPressureGaugePa: p } };
  const observations = observe(alone, phases, changesS, character, width);
  return withAllowances(channel, observations, character, rails, recording.timeS[0]!);
}

/**
 * Adds to observations what a reduced model may miss of them.
 *
 * @param character what the samples say of the sensor
 * @param startS its first sample [s]
 */
export function withAllowances(
  channel: ChannelName,
  observations: Observations,
  character: SensorCharacter,
  rails: Rails,
  startS: number,
): ObservedChannel {
  const n = observations.timeS.length;
  const extraVariance = new Float64Array(n);
  const slowAllowancePa = new Float64Array(n);
  for (let from = 0; from < n; ) {
    let to = from + 1;
    while (to < n && observations.sinceEventS[to]! > observations.sinceEventS[to - 1]!) to++;
    let low = observations.gaugePa[Math.max(0, from - 1)]!;
    let high = low;
    for (let i = from; i < to; i++) {
      low = Math.min(low, observations.gaugePa[i]!);
      high = Math.max(high, observations.gaugePa[i]!);
    }
    for (let i = from; i < to; i++) {
      const since = observations.sinceEventS[i]!;
      if (!Number.isFinite(since)) continue;
      const share =
        since < ACT_S + character.sampleGapS ? ACT_SHARE : ROUGH_SHARE * Math.exp(-Math.max(0, since) / ROUGH_S);
      extraVariance[i] = (share * (high - low)) ** 2;
      slowAllowancePa[i] = STEP_SHARE * (high - low) * Math.exp(-since / FADE_S);
    }
    from = to;
  }
  // a module that has just woken shows its filter settling; a long first bin holds all of that whatever its mean time
  for (let i = 0; i < n && (i === 0 || observations.timeS[i]! - startS < WAKE_S); i++) {
    extraVariance[i] = Math.max(extraVariance[i]!, observations.gaugePa[i]! ** 2);
  }
  const startPa = startReading(observations);
  return { channel, observations, rails, character, startPa, extraVariance, slowAllowancePa, modelErrorPa: 0 };
}

/** @param share of all that a channel shows that its model is granted everywhere [-] */
export function withModelError(c: ObservedChannel, share: number): ObservedChannel {
  const { gaugePa } = c.observations;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  // the first bin holds the sensor's waking
  for (let i = 1; i < gaugePa.length; i++) {
    low = Math.min(low, gaugePa[i]!);
    high = Math.max(high, gaugePa[i]!);
  }
  return { ...c, modelErrorPa: share * Math.max(0, high - low) };
}

export function whitenChannel(c: ObservedChannel, noise: SlowNoise): Whitening {
  const n = c.observations.timeS.length;
  const everywhere = Math.hypot(noise.slowPa, c.modelErrorPa);
  const everywhereS = noise.slowPa > c.modelErrorPa ? noise.slowS : MODEL_S;
  return new Whitening(
    c.observations.timeS,
    c.observations.whiteVariance.map((v, i) => v + c.extraVariance[i]!),
    c.slowAllowancePa.map((a) => Math.hypot(a, everywhere)),
    // an error of its own kind has its own time scale
    c.slowAllowancePa.map((a) => (a > everywhere ? FADE_S : everywhereS)),
    new Uint8Array(n),
  );
}

const SLOW_PA = [0.5, 1, 2, 4, 8, 16, 32, 64, 128];
const SLOW_S = [3, 10, 30, 100, 300];
/** Prior: slow error about 4 Pa within a factor of three, judgement. */
const SLOW_CENTRE_PA = 4;
const SLOW_SD_LN = 1;

/** Most probable slow error given what the best explanation leaves [Pa]. */
export function estimateSlowNoise(c: ObservedChannel, residualPa: Float64Array): SlowNoise {
  const e = new Float64Array(residualPa.length);
  let best = FIRST_SLOW_NOISE;
  let bestScore = Number.NEGATIVE_INFINITY;
  for (const slowPa of SLOW_PA) {
    for (const slowS of SLOW_S) {
      const w = whitenChannel(c, { slowPa, slowS });
      w.apply(residualPa, e, 0);
      let s = -0.5 * w.logDeterminant - 0.5 * (Math.log(slowPa / SLOW_CENTRE_PA) / SLOW_SD_LN) ** 2;
      // Student t with 6 degrees of freedom: outliers must not set the noise
      for (const x of e) s -= 3.5 * Math.log1p((x * x) / 6);
      if (s > bestScore) {
        bestScore = s;
        best = { slowPa, slowS };
      }
    }
  }
  return best;
}

function startReading(o: Observations): number {
  const first = o.timeS[0] ?? 0;
  const settled = o.timeS.findIndex((t) => t - first >= WAKE_S);
  return o.gaugePa[Math.max(0, settled)] ?? 0;
}
