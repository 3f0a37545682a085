/**
 * How fast the ambient pressure changes while a car drives up or down. A gauge sensor on a sealed tank shows it like a
 * leak or a draw: 1 % of slope at 80 km/h is 2.6 Pa/s, as much as a hole of 0.25 mm lets in.
 */
import type { Recording } from '../../recording/recording.ts';

export interface AmbientTrend {
  /** Change of ambient pressure [Pa/s], the best straight line through the barometer. */
  readonly ratePaPerS: number;
  readonly sdPaPerS: number;
}

/** Hydrostatic change of pressure with height at sea level [Pa/m]: 1.225 kg/m3 times 9.81 m/s2 (US Standard Atmosphere 1976). */
const PA_PER_M = 12;
/** Slope of roads, one sigma [-]: 1 to 2 % on through roads, judgement. */
const ROAD_SLOPE_SD = 0.015;
/** How far a road's slope strays from a straight line within a test, as a share of a road's slope [-], judgement. */
const UNEVEN_SHARE = 0.15;
/** Below this mean speed a car stands or creeps [m/s], judgement. */
const CREEPING_M_PER_S = 2;
/** Speed where a changing barometer alone shows that the car moves [m/s]: 60 km/h, judgement. */
const UNKNOWN_SPEED_M_PER_S = 17;
/** Steps that barometers are recorded with [Pa], coarse to fine; the first is SAE J1979 item 33. */
const STEPS_PA = [1000, 100, 10];
/** A reading strays from its step's edges by this share of the step and by this pressure [Pa], judgement. */
const SOFT_SHARE = 0.1;
const SOFT_PA = 10;
/** Readings used, evenly chosen: they change slowly. */
const MOST_READINGS = 60;
/** Grid of slopes, in road-slope sigmas, and of heights, in steps. */
const SLOPES = { reach: 3.5, count: 71 };
const HEIGHTS = { reach: 1.5, count: 31 };

/**
 * @param recording with speed and barometer as far as it has them
 * @returns the trend; absent where the car stands, as far as the recording tells
 */
export function ambientTrend(recording: Recording): AmbientTrend | undefined {
  const { timeS, channels } = recording;
  const barometer = channels.barometricPa && readings(timeS, channels.barometricPa);
  const speed = channels.vehicleSpeedMPerS?.filter(Number.isFinite);
  const stepPa = barometer && stepOf(barometer.map((r) => r.pa));
  const meanSpeed =
    speed && speed.length > 0
      ? speed.reduce((s, v) => s + v, 0) / speed.length
      : barometer && stepPa && changes(barometer, stepPa)
        ? UNKNOWN_SPEED_M_PER_S
        : 0;
  if (meanSpeed < CREEPING_M_PER_S) return undefined;
  const roadSd = PA_PER_M * ROAD_SLOPE_SD * meanSpeed;
  const uneven = UNEVEN_SHARE * roadSd;
  if (!barometer || barometer.length === 0 || !stepPa) return { ratePaPerS: 0, sdPaPerS: roadSd };
  const { mean, sd } = slopeOf(barometer, stepPa, roadSd);
  return { ratePaPerS: mean, sdPaPerS: Math.hypot(sd, uneven) };
}

interface Reading {
  readonly timeS: number;
  readonly pa: number;
}

function readings(timeS: Float64Array, pa: Float64Array): Reading[] {
  const all: Reading[] = [];
  for (let i = 0; i < pa.length; i++) if (Number.isFinite(pa[i]!)) all.push({ timeS: timeS[i]!, pa: pa[i]! });
  const stride = Math.max(1, Math.floor(all.length / MOST_READINGS));
  return all.filter((_, i) => i % stride === 0);
}

const stepOf = (values: readonly number[]): number =>
  STEPS_PA.find((step) => values.every((v) => Math.abs(v / step - Math.round(v / step)) < 1e-3)) ?? 1;

/** More than the flicker of one step. */
const changes = (barometer: readonly Reading[], stepPa: number): boolean =>
  Math.max(...barometer.map((r) => r.pa)) - Math.min(...barometer.map((r) => r.pa)) > 1.5 * stepPa;

/** Posterior of the slope under rounded readings and the slopes that roads have, on a grid of slopes and heights. */
function slopeOf(barometer: readonly Reading[], stepPa: number, roadSd: number): { mean: number; sd: number } {
  const middleS = 0.5 * (barometer[0]!.timeS + barometer.at(-1)!.timeS);
  const meanPa = barometer.reduce((s, r) => s + r.pa, 0) / barometer.length;
  const soft = SOFT_SHARE * stepPa + SOFT_PA;
  const weights: { slope: number; log: number }[] = [];
  for (let i = 0; i < SLOPES.count; i++) {
    const sigma = SLOPES.reach * ((2 * i) / (SLOPES.count - 1) - 1);
    for (let j = 0; j < HEIGHTS.count; j++) {
      const height = meanPa + HEIGHTS.reach * stepPa * ((2 * j) / (HEIGHTS.count - 1) - 1);
      let log = -0.5 * sigma * sigma;
      for (const r of barometer) {
        const beyond = Math.abs(height + sigma * roadSd * (r.timeS - middleS) - r.pa) - 0.5 * stepPa;
        if (beyond > 0) log -= 0.5 * (beyond / soft) ** 2;
      }
      weights.push({ slope: sigma * roadSd, log });
    }
  }
  const top = Math.max(...weights.map((w) => w.log));
  let mass = 0;
  let first = 0;
  let second = 0;
  for (const { slope, log } of weights) {
    const w = Math.exp(log - top);
    mass += w;
    first += w * slope;
    second += w * slope * slope;
  }
  const mean = first / mass;
  return { mean, sd: Math.sqrt(Math.max(0, second / mass - mean * mean)) };
}
