/**
 * The noise model: white sensor noise, an extra allowance where the model is known to be rough, and a slow
 * error whose size and correlation time are chosen by how well they predict the residuals of a first fit.
 */
import type { Observations } from './observations.ts';
import { Whitening } from './whitening.ts';

export interface Noise {
  /** Factor on the white variance [-]. */
  readonly whiteScale: number;
  readonly slowPa: number;
  readonly slowS: number;
  /** How much of the allowances for draw and release the residuals there need [-], at most all of them. */
  readonly roughness: number;
}

export const FIRST_NOISE: Noise = { whiteScale: 1, slowPa: 4, slowS: 10, roughness: 1 };
/** Noise of a model that follows the readings closely. */
export const SMALL_NOISE: Noise = { whiteScale: 1, slowPa: 1, slowS: 1, roughness: 1 };

/**
 * What a two-space model cannot follow: in the draw the purge valve's flow and the carbon's answer, at the release
 * the inrush through a long vent path. Its error there is taken as a share of the pressure excursion, correlated over
 * some seconds, so that these phases tell valves from holes but do not size a hole. How much of it a recording needs, its residuals say.
 * Judgement.
 */
const DRAW_SHARE = 0.15;
const DRAW_S = 15;
const RELEASE_SHARE = 0.2;
const RELEASE_S = 4;
const ROUGH_PHASES: readonly string[] = ['draw', 'release'];
/**
 * The same in the other procedures: with the vent open the valve's and the filter's own laws are not quite the model's;
 * engine off, the fuel's temperature is not quite a few straight lines; filling, the liquid splashes, and is still after it.
 */
const OTHER_SHARE: Readonly<Record<string, { readonly share: number; readonly timeS: number }>> = {
  purge: { share: 0.08, timeS: 20 },
  idle: { share: 0.08, timeS: 20 },
  sealed: { share: 0.03, timeS: 150 },
  vented: { share: 0.03, timeS: 150 },
  filling: { share: 0.06, timeS: 15 },
  filled: { share: 0.01, timeS: 6 },
};
/** A sensor's zero wanders with its own temperature over minutes by about a percent of a percent of its span [Pa], judgement. */
const ZERO_WANDER_PA = 1.5;
/** White part of the same, and after any vent command [share of the excursion], [s]. */
const ROUGH_SHARE = 0.008;
const CHANGE_S = 1.5;

/**
 * Filling, the liquid starts and stops within tenths of a second that no channel records: the readings are off by what the pressure
 * changes in that time [s]. Shut-offs are noted to a tenth of a second. Judgement.
 */
const FILLING_TIMING_S = 0.05;

/** Fastest change of the readings to either neighbour [Pa/s]. */
function steepness(o: Observations, i: number): number {
  const to = (k: number) =>
    k >= 0 && k < o.gaugePa.length ? Math.abs((o.gaugePa[k]! - o.gaugePa[i]!) / (o.timeS[k]! - o.timeS[i]!)) : 0;
  return Math.max(to(i - 1), to(i + 1));
}

/**
 * The noise of a sensor that says nothing of the tank: no allowance for what the model cannot follow, but the same wander of its zero
 * that every other cause is granted, or a standing pressure would be taken for a standing sensor.
 */
export function sensorOnlyWhitening(o: Observations, noise: Noise, procedure: string): Whitening {
  const n = o.timeS.length;
  const slowPa = new Float64Array(n).fill(noise.slowPa);
  const slowS = new Float64Array(n).fill(noise.slowS);
  for (let i = 0; i < n; i++) {
    const other = procedure === 'vacuum-draw' ? undefined : OTHER_SHARE[o.phase[i]!];
    if (!other) continue;
    slowPa[i] = Math.hypot(noise.slowPa, ZERO_WANDER_PA);
    if (ZERO_WANDER_PA > noise.slowPa) slowS[i] = other.timeS;
  }
  return new Whitening(
    o.timeS,
    o.whiteVariance.map((v) => v * noise.whiteScale),
    slowPa,
    slowS,
    new Uint8Array(n),
  );
}

/** Largest departure of the readings from their first value [Pa]. */
function excursion(o: Observations): number {
  let most = 0;
  let noise = 0;
  for (let i = 0; i < o.gaugePa.length; i++) {
    most = Math.max(most, Math.abs(o.gaugePa[i]! - o.gaugePa[0]!));
    noise += o.whiteVariance[i]!;
  }
  // the extreme of many noisy bins is not an excursion
  return Math.max(0, most - 4 * Math.sqrt(noise / Math.max(1, o.gaugePa.length)));
}

/**
 * The noise that a size is read with: what the model misses in draw and release is not chance but the same throughout, and would
 * bend a size, so these phases keep the whole of their allowances.
 */
export const sizingNoise = (noise: Noise): Noise => ({ ...noise, roughness: 1 });

/** The error that the noise model expects at each observation. */
export interface Allowance {
  /** Variance of its white part [Pa2]. */
  readonly variance: Float64Array;
  /** Standard deviation [Pa] and correlation time [s] of its slow part. */
  readonly slowPa: Float64Array;
  readonly slowS: Float64Array;
  /** 1 where the slow part begins anew. */
  readonly fresh: Uint8Array;
}

/** Sensor noise and slow error, with the allowances for phases that the model cannot follow. */
export function allowanceFor(o: Observations, noise: Noise, procedure: string): Allowance {
  const n = o.timeS.length;
  const variance = new Float64Array(n);
  const slowPa = new Float64Array(n).fill(noise.slowPa);
  const slowS = new Float64Array(n).fill(noise.slowS);
  const fresh = new Uint8Array(n);
  const depth = excursion(o);
  const { roughness } = noise;
  const rough = (roughness * ROUGH_SHARE * depth) ** 2;
  for (let i = 0; i < n; i++) {
    variance[i] = o.whiteVariance[i]! * noise.whiteScale;
    if (procedure === 'refuelling') variance[i]! += (FILLING_TIMING_S * steepness(o, i)) ** 2;
    if (i > 0 && o.phase[i] !== o.phase[i - 1]) fresh[i] = 1;
    if (o.phase[i] === 'draw') {
      variance[i]! += rough;
      slowPa[i] = Math.hypot(noise.slowPa, roughness * DRAW_SHARE * depth);
      slowS[i] = DRAW_S;
    } else if (o.phase[i] === 'release') {
      variance[i]! += rough;
      if (o.sinceEventS[i]! < 4 * RELEASE_S) {
        const left = Math.exp(-o.sinceEventS[i]! / RELEASE_S);
        slowPa[i] = Math.hypot(noise.slowPa, roughness * RELEASE_SHARE * depth * left);
        slowS[i] = RELEASE_S;
      }
    } else {
      const other = procedure === 'vacuum-draw' ? undefined : OTHER_SHARE[o.phase[i]!];
      if (other) {
        const share = Math.hypot(other.share * depth, ZERO_WANDER_PA);
        if (share > noise.slowPa) slowS[i] = other.timeS;
        slowPa[i] = Math.hypot(noise.slowPa, share);
        fresh[i] = 0;
      }
      if (o.sinceEventS[i]! < CHANGE_S) variance[i]! += rough;
    }
  }
  return { variance, slowPa, slowS, fresh };
}

/** @param from number of the first observation to whiten; those before it still say how far the pressure went */
export function whiteningFor(o: Observations, noise: Noise, procedure: string, from = 0): Whitening {
  const a = allowanceFor(o, noise, procedure);
  return new Whitening(
    o.timeS.subarray(from),
    a.variance.subarray(from),
    a.slowPa.subarray(from),
    a.slowS.subarray(from),
    a.fresh.subarray(from),
  );
}

const SLOW_PA = [0.3, 1, 2, 4, 8, 16, 32, 64, 128];
const SLOW_S = [1, 3, 10, 30];
const WHITE = [0.5, 0.7, 1, 1.4, 2];
const ROUGHNESS = [0.15, 0.25, 0.4, 0.65, 1];
/**
 * Priors: slow error about 3 Pa within a factor of three; white noise as measured within a third; half of the allowances for draw
 * and release within a factor of two or so, as they are set for cars that the model follows badly.
 */
const SLOW_CENTRE_PA = 3;
const SLOW_SD_LN = 1;
const WHITE_SD_LN = 0.35;
const ROUGHNESS_CENTRE = 0.5;
const ROUGHNESS_SD_LN = 0.8;

/** ln prior density of a noise, constants left out. */
export const noiseLogPrior = (noise: Noise): number =>
  -0.5 * (Math.log(noise.slowPa / SLOW_CENTRE_PA) / SLOW_SD_LN) ** 2 -
  0.5 * (Math.log(noise.whiteScale) / WHITE_SD_LN) ** 2 -
  0.5 * (Math.log(noise.roughness / ROUGHNESS_CENTRE) / ROUGHNESS_SD_LN) ** 2;

/** A slow error of another size that a size is read with as well: so many times as large, and lasting at least so long [s]. */
const OTHER_SLOW = [
  { times: 2, leastS: 1 },
  { times: 2, leastS: 10 },
  { times: 4, leastS: 10 },
] as const;

/**
 * The noise and ones near it. What a fit leaves is less than the error that was there, for the fit has followed some of it: a slow error
 * that looks like a hole least of all shows in what is left. How probable each is the evidence says.
 */
export const noisesNear = (noise: Noise): Noise[] => [
  noise,
  ...OTHER_SLOW.map(({ times, leastS }) => ({
    ...noise,
    slowPa: times * noise.slowPa,
    slowS: Math.max(leastS, noise.slowS),
  })).filter((n, i, all) => all.findIndex((o) => o.slowPa === n.slowPa && o.slowS === n.slowS) === i),
];

/**
 * Most probable noise given the residuals of a fit.
 *
 * @param o observations
 * @param residualPa observed minus modelled reading [Pa]
 */
export function estimateNoise(o: Observations, residualPa: Float64Array, procedure: string): Noise {
  const e = new Float64Array(residualPa.length);
  const logDensity = (noise: Noise) => {
    const w = whiteningFor(o, noise, procedure);
    w.apply(residualPa, e, 0);
    let s = -0.5 * w.logDeterminant;
    for (const x of e) s -= studentCost(x);
    return s + noiseLogPrior(noise);
  };
  const quiet: Noise[] = WHITE.flatMap((whiteScale) =>
    SLOW_PA.flatMap((slowPa) =>
      // so small an error has no time scale
      (slowPa === SLOW_PA[0] ? SLOW_S.slice(0, 1) : SLOW_S).map((slowS) => ({
        whiteScale,
        slowPa,
        slowS,
        roughness: 1,
      })),
    ),
  );
  const settled = mostProbable(quiet, logDensity);
  // draw and release have allowances of their own, which hardly touch the rest
  if (!o.phase.some((p) => ROUGH_PHASES.includes(p))) return settled;
  return mostProbable(
    ROUGHNESS.map((roughness) => ({ ...settled, roughness })),
    logDensity,
  );
}

function mostProbable(list: readonly Noise[], logDensity: (noise: Noise) => number): Noise {
  let best = FIRST_NOISE;
  let highest = Number.NEGATIVE_INFINITY;
  for (const noise of list) {
    const s = logDensity(noise);
    if (s > highest) {
      highest = s;
      best = noise;
    }
  }
  return best;
}

/** Minus log density of a Student t with few degrees of freedom: outliers must not set the noise. */
function studentCost(x: number): number {
  const nu = 6;
  return 0.5 * (nu + 1) * Math.log1p((x * x) / nu);
}
