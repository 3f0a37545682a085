/**
 * Turns the samples of one recording into observations: means over short bins that never cross a command
 * change, with the variance that white noise and the sensor's steps leave in each mean.
 */

import type { Phase, PhaseKind, Recording } from '../../recording/recording.ts';
import { findResolution } from '../../recording/resolution.ts';

export interface Observations {
  /** Mean time of each bin [s]. */
  readonly timeS: Float64Array;
  /** Mean reading [Pa gauge]. */
  readonly gaugePa: Float64Array;
  /** Variance of the mean from white noise and resolution [Pa2]. */
  readonly whiteVariance: Float64Array;
  readonly phase: readonly PhaseKind[];
  /** Seconds since the last command change, infinite before the first [s]. */
  readonly sinceEventS: Float64Array;
}

/** What the samples say of the sensor, before any model. */
export interface SensorCharacter {
  /** Smallest step between readings [Pa]. */
  readonly stepPa: number;
  /** White noise of one sample [Pa], never below what the step hides. */
  readonly noisePa: number;
  /** The same without the floor; absent where too few readings are off the rails to tell. */
  readonly rawNoisePa?: number;
  readonly sampleGapS: number;
}

/** Below this a noise figure means nothing [Pa]: common sensors and converters, judgement. */
const LEAST_NOISE_PA = 1;

/** Second differences that a noise figure needs at least. */
const FEWEST_FOR_NOISE = 15;

/** Median of a copy. */
export function median(values: ArrayLike<number>): number {
  const s = Float64Array.from(values).sort();
  const m = s.length >> 1;
  if (s.length === 0) return Number.NaN;
  return s.length % 2 === 1 ? s[m]! : 0.5 * (s[m - 1]! + s[m]!);
}

/**
 * Step and white noise of the pressure channel from second differences, quiet stretches only.
 *
 * @param timeS sample times [s]
 * @param p readings [Pa gauge], NaN where missing
 * @param rails output limits of the sensor [Pa gauge]
 */
export function characterise(
  timeS: Float64Array,
  p: Float64Array,
  rails: { readonly low: number; readonly high: number },
): SensorCharacter {
  const stepPa = findResolution(p)?.step ?? 0;
  const second: number[] = [];
  for (let i = 1; i + 1 < p.length; i++) {
    const d = p[i - 1]! - 2 * p[i]! + p[i + 1]!;
    // at the rail nothing moves, whatever the sensor's noise
    const inside = p[i]! > rails.low && p[i]! < rails.high && p[i - 1]! > rails.low && p[i - 1]! < rails.high;
    if (Number.isFinite(d) && inside) second.push(Math.abs(d));
  }
  const mad = second.length > 0 ? median(second) : 0;
  const clipped = second.map((d) => Math.min(d, 6 * mad + 3 * stepPa)).map((d) => d * d);
  const rms = clipped.length > 0 ? Math.sqrt(clipped.reduce((a, b) => a + b, 0) / clipped.length / 6) : 0;
  const robust = (1.4826 * mad) / Math.sqrt(6);
  const floor = Math.max(LEAST_NOISE_PA, stepPa / Math.sqrt(12));
  const gaps = new Float64Array(Math.max(0, timeS.length - 1));
  for (let i = 0; i < gaps.length; i++) gaps[i] = timeS[i + 1]! - timeS[i]!;
  const rawNoisePa = mad > 0 ? Math.min(rms, 2 * robust) : rms;
  return {
    stepPa,
    noisePa: Math.max(floor, rawNoisePa),
    ...(second.length >= FEWEST_FOR_NOISE && { rawNoisePa }),
    sampleGapS: gaps.length > 0 ? median(gaps) : 1,
  };
}

/** Readings that a phase needs at least to tell the noise. */
const FEWEST_IN_PHASE = 10;

/**
 * The same where most of the recording moves: filling, a few samples a second see the pressure's own bends and the splashing as noise.
 * They are noise for the fit, but what the sensor is judged by is what the quietest phase shows.
 */
export function characteriseQuietest(
  timeS: Float64Array,
  p: Float64Array,
  rails: { readonly low: number; readonly high: number },
  phases: readonly Phase[],
): SensorCharacter {
  const whole = characterise(timeS, p, rails);
  let rawNoisePa = whole.rawNoisePa;
  if (rawNoisePa === undefined) return whole;
  for (const { fromS, toS } of phases) {
    const inside = (t: number) => t >= fromS && t < toS;
    const own = p.filter((x, i) => inside(timeS[i]!) && Number.isFinite(x));
    if (own.length < FEWEST_IN_PHASE) continue;
    const here = characterise(timeS.filter(inside), own, rails);
    rawNoisePa = Math.min(rawNoisePa, here.noisePa);
  }
  return { ...whole, rawNoisePa };
}

/** Marks samples that stand out of their four neighbours by more than noise and slope allow. */
function spikeMask(p: Float64Array, character: SensorCharacter): Uint8Array {
  const mask = new Uint8Array(p.length);
  const limit = Math.max(6 * character.noisePa, 4 * character.stepPa, 40);
  const near = new Float64Array(4);
  for (let i = 2; i + 2 < p.length; i++) {
    near[0] = p[i - 2]!;
    near[1] = p[i - 1]!;
    near[2] = p[i + 1]!;
    near[3] = p[i + 2]!;
    near.sort();
    const outside = p[i]! < near[0]! ? near[0]! - p[i]! : p[i]! > near[3]! ? p[i]! - near[3]! : 0;
    if (outside > limit + 1.5 * (near[3]! - near[0]!)) mask[i] = 1;
  }
  return mask;
}

/** Longest bin [s] as a function of the time since the last command change. */
export type BinWidth = (sinceEventS: number) => number;

/**
 * @param recording the recording; needs tank pressure
 * @param phases its phases, in order
 * @param eventsS times of command changes [s], sorted
 * @param character noise and step
 * @param width longest bin
 */
export function observe(
  recording: Recording,
  phases: readonly Phase[],
  eventsS: readonly number[],
  character: SensorCharacter,
  width: BinWidth,
): Observations & { readonly spikes: number } {
  const { timeS } = recording;
  const p = recording.channels.tankPressureGaugePa;
  if (!p) throw new Error(`${recording.label}: no tank pressure channel; map one before asking for a finding`);
  const mask = spikeMask(p, character);
  const time: number[] = [];
  const value: number[] = [];
  const variance: number[] = [];
  const kind: PhaseKind[] = [];
  const since: number[] = [];
  let spikes = 0;
  let event = 0;
  let lastEvent = Number.NEGATIVE_INFINITY;
  let phase = 0;
  let i = 0;
  const { stepPa, noisePa } = character;
  // noise of half a step or more dithers the converter, less leaves its error the same for a whole bin
  const hidden = (stepPa * stepPa * Math.max(0, 1 - (noisePa / (0.5 * stepPa || 1)) ** 2)) / 12;
  while (i < timeS.length) {
    const start = timeS[i]!;
    while (event < eventsS.length && eventsS[event]! <= start) lastEvent = eventsS[event++]!;
    while (phase + 1 < phases.length && phases[phase]!.toS <= start) phase++;
    const stop = Math.min(
      start + width(start - lastEvent),
      event < eventsS.length ? eventsS[event]! : Number.POSITIVE_INFINITY,
      phases[phase] && phases[phase]!.toS > start ? phases[phase]!.toS : Number.POSITIVE_INFINITY,
    );
    let n = 0;
    let st = 0;
    let sp = 0;
    do {
      const x = p[i]!;
      if (mask[i] === 1) spikes++;
      else if (Number.isFinite(x)) {
        n++;
        st += timeS[i]!;
        sp += x;
      }
      i++;
    } while (i < timeS.length && timeS[i]! < stop);
    if (n > 0) {
      time.push(st / n);
      value.push(sp / n);
      variance.push((noisePa * noisePa) / n + hidden);
      kind.push(phases[phase]?.kind ?? 'rest');
      since.push(st / n - lastEvent);
    }
  }
  return {
    timeS: Float64Array.from(time),
    gaugePa: Float64Array.from(value),
    whiteVariance: Float64Array.from(variance),
    phase: kind,
    sinceEventS: Float64Array.from(since),
    spikes,
  };
}
