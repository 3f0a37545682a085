/**
 * What the fuel trims say of the purge flow. Purged gas is air and fuel vapour: it asks the engine for less fuel in
 * proportion to (purge flow) / (engine air flow) and to the vapour's share of it. So trims tell whether gas flows when
 * the tank pressure cannot, and whether the canister is full of fuel.
 *
 *   trim = b + [(n_p - n_v) - n_v M_v AFR / M_air] / n_air,   n_v = c (n_p - n_t) + s n_t
 *
 * n_p purge flow, n_t vapour that comes straight from the tank and of which the share s passes the canister, c vapour
 * share of what the carbon gives up, n_air engine air [mol/s]. b is a constant trim error; the noise is white plus an
 * Ornstein-Uhlenbeck process: the closed loop's wandering, and a share of the effect, since engine size and valve flow
 * are only roughly known.
 */
import type { Recording } from '../../recording/recording.ts';
import type { PurgeFlows } from '../model/two-space.ts';
import type { Observations } from './observations.ts';
import { Whitening } from './whitening.ts';

/** Molar gas constant [J/(mol K)]. */
const R = 8.314462618;
/** Fuel that a mole of air burns, against the fuel in a mole of vapour: M_v AFR / M_air with AFR 14.7 (stoichiometric petrol). */
const VAPOUR_OVER_AIR = (0.066 * 14.7) / 0.0289647;
/** Four-stroke displacement [m3] and volumetric efficiency, mid-size petrol engines, common practice, no source. */
const DISPLACEMENT_M3 = 1.8e-3;
const VOLUMETRIC_EFFICIENCY = 0.85;
/** Constant trim error, one sigma [-]; loop wandering [-] and its time [s]. Judgement. */
const BIAS_SD = 0.04;
const WANDER_SD = 0.01;
const WANDER_S = 25;
const LEAST_NOISE = 0.004;
/** Trims are limited to about this [-]. Common practice, no source. */
const TRIM_LIMIT = 0.25;

/**
 * Vapour share of what the carbon gives up, medians and spread of the logarithm. Judgement: a working canister gives a few
 * percent, a full one what its adsorption equilibrium holds in the passing air, some tens of percent.
 */
export const VAPOUR_SHARE = {
  healthy: { centre: 0.045, sd: 0.6 },
  saturated: { centre: 0.18, sd: 0.5 },
} as const;
/** Share of the tank's vapour that slips past the carbon to the purge line: both ports sit at one end. Judgement. */
const SLIP = [0.15, 0.6];
/** The loop follows within seconds, and what it still carries after a change fades over some more [s]. Judgement. */
const LOOP_LAG_S = 3;
const AFTER_EFFECT_S = 20;
/** Degrees of freedom of the residuals' Student t: gear changes and tip-ins are not noise of the model. */
const TAIL = 5;
/** How far the effect may wander about its size, one sigma [-]; a constant factor is the vapour share's. Judgement. */
const EFFECT_ERROR = 0.15;
/** The carbon clears as it is purged: vapour share at the end of the recording over that at its start, ln. Judgement. */
const CLEARING = [0, -0.7, -1.5];

/** Points of the integral over the vapour share, and its ends [-]. */
const SHARE_POINTS = 23;
const SHARE_LOW = 0.006;
const SHARE_HIGH = 0.6;

export interface TrimData {
  /** Sum of short and long trim at each observation bin, NaN where absent [-]. */
  readonly trim: Float64Array;
  /** Engine air flow at each bin [mol/s]. */
  readonly airMolPerS: Float64Array;
  readonly noise: number;
}

/** Bins trims and engine air as the pressure was binned; undefined without trims or a running engine. */
export function trimData(recording: Recording, o: Observations, ambientTemperatureK: number): TrimData | undefined {
  const { shortTrim, longTrim, engineSpeedRpm, manifoldAbsPa } = recording.channels;
  if (!shortTrim || !engineSpeedRpm || !manifoldAbsPa) return undefined;
  const n = o.timeS.length;
  const trim = new Float64Array(n).fill(Number.NaN);
  const air = new Float64Array(n);
  const { timeS } = recording;
  let running = 0;
  let i = 0;
  for (let k = 0; k < n; k++) {
    const stop = k + 1 < n ? 0.5 * (o.timeS[k]! + o.timeS[k + 1]!) : Number.POSITIVE_INFINITY;
    let m = 0;
    let st = 0;
    let sa = 0;
    for (; i < timeS.length && timeS[i]! <= stop; i++) {
      const t = shortTrim[i]! + (longTrim?.[i] ?? 0);
      const flow = (engineSpeedRpm[i]! / 120) * ((manifoldAbsPa[i]! * DISPLACEMENT_M3) / (R * ambientTemperatureK));
      if (!Number.isFinite(t) || !Number.isFinite(flow)) continue;
      m++;
      st += t;
      sa += flow * VOLUMETRIC_EFFICIENCY;
    }
    if (m > 0) {
      trim[k] = st / m;
      air[k] = sa / m;
      if (air[k]! > 0.01) running++;
    }
  }
  if (running < 0.5 * n) return undefined;
  let s = 0;
  let c = 0;
  for (let k = 1; k + 1 < n; k++) {
    const d = trim[k - 1]! - 2 * trim[k]! + trim[k + 1]!;
    if (Number.isFinite(d)) {
      s += Math.min(d * d, 0.03 * 0.03);
      c++;
    }
  }
  return { trim, airMolPerS: air, noise: Math.max(LEAST_NOISE, Math.sqrt(s / Math.max(1, c) / 6)) };
}

/**
 * ln probability of the trims, given the flows of a cause, with the vapour shares integrated out.
 *
 * @param data trims and engine air
 * @param timeS bin times [s]
 * @param flows modelled flows at each bin
 * @param share prior of the vapour share
 */
export function trimLogEvidence(
  data: TrimData,
  timeS: Float64Array,
  flows: PurgeFlows,
  share: { readonly centre: number; readonly sd: number },
): number {
  const used: number[] = [];
  for (let k = 0; k < timeS.length; k++) if (Number.isFinite(data.trim[k]!) && data.airMolPerS[k]! > 0.01) used.push(k);
  const n = used.length;
  const t = Float64Array.from(used, (k) => timeS[k]!);
  const noise = new Float64Array(n).fill(data.noise ** 2);
  const times = new Float64Array(n).fill(WANDER_S);
  const never = new Uint8Array(n);
  const one = new Float64Array(n).fill(1);
  const ones = new Float64Array(n);
  const wander = new Float64Array(n);
  const left = new Float64Array(n);
  const white = new Float64Array(n);
  const follow = t.map((x, i) => (i === 0 ? 1 : 1 - Math.exp(-(x - t[i - 1]!) / LOOP_LAG_S)));
  const fade = t.map((x, i) => (i === 0 ? 1 : Math.exp(-(x - t[i - 1]!) / AFTER_EFFECT_S)));
  // share of the recording's purge volume that has passed
  const done = new Float64Array(n);
  let passed = 0;
  for (let i = 0; i < n; i++) {
    passed += Math.max(0, flows.purge[used[i]!]!) * (i > 0 ? t[i]! - t[i - 1]! : 0);
    done[i] = passed;
  }
  for (let i = 0; i < n; i++) done[i] = passed > 0 ? done[i]! / passed : 0.5;
  const logs: number[] = [];
  for (let g = 0; g < SHARE_POINTS; g++) {
    const c0 = SHARE_LOW * (SHARE_HIGH / SHARE_LOW) ** (g / (SHARE_POINTS - 1));
    const z = Math.log(c0 / share.centre) / share.sd;
    const prior = -0.5 * z * z - Math.log(share.sd);
    for (const [slip, clearing] of SLIP.flatMap((a) => CLEARING.map((b) => [a, b] as const))) {
      let lagged = 0;
      let envelope = 0;
      for (let i = 0; i < n; i++) {
        const k = used[i]!;
        const c = clearing === 0 ? c0 : c0 * Math.exp(clearing * (done[i]! - 0.5));
        const purge = flows.purge[k]!;
        const straight = Math.min(flows.vapourFromTank[k]!, Math.max(0, purge));
        const vapour = Math.max(0, c * (purge - straight)) + slip * straight;
        const raw = (purge - vapour - VAPOUR_OVER_AIR * vapour) / data.airMolPerS[k]!;
        const effect = raw < -TRIM_LIMIT ? -TRIM_LIMIT : Math.min(raw, TRIM_LIMIT);
        lagged = i === 0 ? effect : lagged + (effect - lagged) * follow[i]!;
        const size = lagged < 0 ? -lagged : lagged;
        envelope *= fade[i]!;
        if (size > envelope) envelope = size;
        left[i] = data.trim[k]! - lagged;
        wander[i] = Math.hypot(WANDER_SD, EFFECT_ERROR * envelope);
      }
      const w = new Whitening(t, noise, wander, times, never);
      w.apply(one, ones, 0);
      w.apply(left, white, 0);
      let r1 = 0;
      let oneOne = 1 / BIAS_SD ** 2;
      for (let i = 0; i < n; i++) {
        r1 += white[i]! * ones[i]!;
        oneOne += ones[i]! * ones[i]!;
      }
      const bias = r1 / oneOne;
      let cost = 0.5 * (bias / BIAS_SD) ** 2;
      for (let i = 0; i < n; i++) cost += 0.5 * (TAIL + 1) * Math.log1p((white[i]! - bias * ones[i]!) ** 2 / TAIL);
      logs.push(-cost - 0.5 * w.logDeterminant - 0.5 * Math.log(oneOne) + prior);
    }
  }
  const top = Math.max(...logs);
  return top + Math.log(logs.reduce((s, l) => s + Math.exp(l - top), 0) / logs.length);
}
