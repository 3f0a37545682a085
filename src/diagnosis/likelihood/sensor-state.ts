/** What the readings alone say of the sensor: frozen, or far noisier than sensors are. */
import type { Prepared } from '../prepare.ts';
import { STILL_PA } from './freeze-onset.ts';
import { logMean } from './log-mean.ts';
import { type Noise, sensorOnlyWhitening, whiteningFor } from './noise.ts';
import { median, type Observations } from './observations.ts';

/** ln normal density. */
const logNormal = (x: number, centre: number, sd: number) =>
  -0.5 * ((x - centre) / sd) ** 2 - Math.log(sd) - 0.5 * Math.log(2 * Math.PI);

/** White noise of one sample [Pa], as medians and spread of ln: sound sensors, noisy ones, frozen ones. Judgement. */
const SOUND_NOISE = { centre: Math.log(8), sd: 0.8 };
const NOISY = { centre: Math.log(130), sd: 0.7 };
const FROZEN = { centre: Math.log(1), sd: 0.8 };
/** A reading that never moves has at least this [Pa], so that its logarithm exists. */
const LEAST_NOISE_PA = 0.01;
/** Range of a sensor of which nothing is known [Pa], common practice, no source. */
const UNKNOWN_RANGE_PA = 1e4;
/** Noise below this share of the step does not show; its size then says only "small". */
const HIDDEN_SHARE = 0.4;

/** Normal distribution function, Abramowitz and Stegun 7.1.26, error below 1.5e-7. */
function normalCdf(x: number): number {
  const t = 1 / (1 + (0.3275911 * Math.abs(x)) / Math.SQRT2);
  const e =
    1 -
    ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) *
      t *
      Math.exp((-x * x) / 2);
  return x >= 0 ? 0.5 * (1 + e) : 0.5 * (1 - e);
}

function noiseLogDensity(noisePa: number, stepPa: number, prior: { centre: number; sd: number }): number {
  const hidden = HIDDEN_SHARE * stepPa;
  if (noisePa <= hidden) {
    return Math.log(Math.max(1e-12, normalCdf((Math.log(hidden) - prior.centre) / prior.sd))) - Math.log(hidden);
  }
  return logNormal(Math.log(noisePa), prior.centre, prior.sd) - Math.log(noisePa);
}

export interface SensorState {
  /** ln density of the measured noise for a sound, a noisy and a frozen sensor. */
  readonly sound: number;
  readonly noisy: number;
  readonly frozen: number;
}

/** @param p a prepared recording */
export function sensorState(p: Pick<Prepared, 'character'>): SensorState {
  const { character } = p;
  if (character.rawNoisePa === undefined) return { sound: 0, noisy: 0, frozen: 0 };
  const noise = Math.max(LEAST_NOISE_PA, character.rawNoisePa);
  return {
    sound: noiseLogDensity(noise, character.stepPa, SOUND_NOISE),
    noisy: noiseLogDensity(noise, character.stepPa, NOISY),
    frozen: noiseLogDensity(noise, character.stepPa, FROZEN),
  };
}

/** A reading this many steps from the rail stands on it. */
const RAIL_STEPS = 1;

/**
 * Before it froze the sensor was sound and read a pressure of which nothing is assumed but that it walks: by one of these from one
 * reading to the next [Pa], each as likely as the other. Judgement.
 */
const WALKS_PA = [1, 3, 10, 30, 100, 300, 1000] as const;

/**
 * ln evidence of the readings as one constant anywhere in the sensor's range plus noise, from the onset on where they
 * froze half-way, in the same units as a fit's evidence.
 */
export function constantLogEvidence(p: Prepared, noise: Noise): number {
  const { observations: o, clip } = p;
  const onset = p.freezeOnsetS ?? Number.NEGATIVE_INFINITY;
  const from = Math.max(
    0,
    o.timeS.findIndex((t) => t >= onset),
  );
  const frozen = after(o, from);
  const level = median(frozen.gaugePa);
  // at its rail a sound sensor stands as still as a frozen one: both are granted the same error there
  const w = isRail(level, p)
    ? whiteningFor(o, noise, p.procedure, from)
    : sensorOnlyWhitening(frozen, noise, p.procedure);
  const n = frozen.gaugePa.length;
  const readings = new Float64Array(n);
  const ones = new Float64Array(n);
  w.apply(
    frozen.gaugePa.map((x) => x - level),
    readings,
    0,
  );
  w.apply(new Float64Array(n).fill(1), ones, 0);
  let rr = 0;
  let r1 = 0;
  let oneOne = 0;
  for (let i = 0; i < n; i++) {
    rr += readings[i]! ** 2;
    r1 += readings[i]! * ones[i]!;
    oneOne += ones[i]! ** 2;
  }
  const width = Number.isFinite(clip.high - clip.low) ? clip.high - clip.low : UNKNOWN_RANGE_PA;
  const log = -0.5 * (rr - (r1 * r1) / oneOne) - 0.5 * Math.log(oneOne) + 0.5 * Math.log(2 * Math.PI) - Math.log(width);
  return log - 0.5 * w.logDeterminant + walkLogEvidence(o, from);
}

const isRail = (level: number, { clip, character }: Prepared): boolean =>
  Math.min(Math.abs(level - clip.low), Math.abs(level - clip.high)) <= RAIL_STEPS * character.stepPa + STILL_PA;

const after = (o: Observations, from: number): Observations => ({
  timeS: o.timeS.subarray(from),
  gaugePa: o.gaugePa.subarray(from),
  whiteVariance: o.whiteVariance.subarray(from),
  phase: o.phase.slice(from),
  sinceEventS: o.sinceEventS.subarray(from),
});

/** ln evidence of the readings before number `end` as a walk that ends where that one is. */
function walkLogEvidence(o: Observations, end: number): number {
  if (end <= 0) return 0;
  const logs = WALKS_PA.map((walk) => {
    let log = 0;
    for (let i = 0; i < end; i++) {
      const variance = walk * walk + o.whiteVariance[i]!;
      log -= 0.5 * (Math.log(variance) + (o.gaugePa[i]! - o.gaugePa[i + 1]!) ** 2 / variance);
    }
    return log;
  });
  return logMean(logs);
}
