/** What the car file and the channels say of the conditions, with how well each is known. */

import { blendReidVapourPressure, trueVapourPressure } from '../../physics/fuel-vapour.ts';
import type { Recording } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import { type AmbientTrend, ambientTrend } from './ambient-trend.ts';

export interface Conditions {
  /** Mean over the recording [Pa]. */
  readonly ambientAbsPa: number;
  /** Its change while the car drives; absent where it stands. */
  readonly ambientTrend?: AmbientTrend;
  readonly ambientTemperatureK: number;
  readonly fuelTemperatureK: number;
  readonly fuelTemperatureKnown: boolean;
  /** How well it is known, one sigma [K]. */
  readonly fuelTemperatureSdK: number;
  readonly fuelLevel: number;
  readonly levelKnown: boolean;
  readonly tankVolumeM3: number;
  readonly neckVolumeM3: number;
  readonly canisterVolumeM3: number;
  /** Gas volume above the fuel with the neck [m3], and its standard deviation in ln [-]. */
  readonly gasVolumeM3: number;
  readonly gasVolumeSdLn: number;
  /** Fuel vapour pressure [Pa], its standard deviation in ln [-], its relative slope [1/K]. */
  readonly vapourPressurePa: number;
  readonly vapourPressureSdLn: number;
  readonly vapourSensitivityPerK: number;
  readonly warnings: readonly string[];
}

/** Standard atmosphere [Pa] and a mild day [K], used only where the recording is silent. */
const ATMOSPHERE_PA = 101325;
const MILD_K = 293.15;
/** A fuel tank with nothing said of it: 60 L give or take a quarter, common practice, no source. */
const TANK_M3 = 0.06;
const TANK_UNKNOWN_SD = 0.25;
const NECK_M3 = 0.002;
const CANISTER_M3 = 0.0025;
/** Tank volumes in papers are good to 2 %, level gauges to 2.5 % of a tank, judgement. */
const TANK_SD = 0.02;
const LEVEL_SD = 0.025;
const LEVEL_UNKNOWN_SD = 0.25;
/** Running cars warm their fuel some kelvin above ambient, common practice, no source. */
const FUEL_ABOVE_AMBIENT_K = 6;
const FUEL_TEMPERATURE_SD_K = 1.5;
const FUEL_TEMPERATURE_UNKNOWN_SD_K = 7;
/** Reid vapour pressures of road petrol over all seasons [Pa], EN 228 classes, from memory. */
const REID_LOW_PA = 45e3;
const REID_HIGH_PA = 95e3;
/** The fit of blending reaches so far [volume of ethanol over volume of blend]. */
const BLEND_REACH = 0.15;

/** A stated range is that of the fuel as sold; without one, ethanol lifts the petrol's. */
function anySeason(ethanolVolumeFraction: number): { readonly low: number; readonly high: number } {
  const blended = Math.min(BLEND_REACH, ethanolVolumeFraction);
  return {
    low: blendReidVapourPressure(REID_LOW_PA, blended),
    high: blendReidVapourPressure(REID_HIGH_PA, blended),
  };
}

function mean(x: Float64Array | undefined): number | undefined {
  if (!x) return undefined;
  let s = 0;
  let n = 0;
  for (const v of x) {
    if (Number.isFinite(v)) {
      s += v;
      n++;
    }
  }
  return n > 0 ? s / n : undefined;
}

/** First finite value: levels are read before anything moves the fuel. */
function start(x: Float64Array | undefined, most: number): number | undefined {
  return mean(x?.filter(Number.isFinite).slice(0, most));
}

export function findConditions(car: Car, recording: Recording): Conditions {
  const { channels } = recording;
  const warnings: string[] = [];
  const missing = (what: string, assumed: string) =>
    warnings.push(`${recording.label}: ${what} is not known; ${assumed}`);
  const ambientAbsPa = mean(channels.barometricPa) ?? ATMOSPHERE_PA;
  if (!channels.barometricPa) missing('barometric pressure', 'sea level is assumed');
  const ambientTemperatureK = mean(channels.ambientTemperatureK) ?? mean(channels.intakeTemperatureK) ?? MILD_K;
  if (!channels.ambientTemperatureK) missing('ambient temperature', 'the intake air or a mild day stands in');
  const known = start(channels.fuelTemperatureK, 20);
  const fuelTemperatureK = known ?? ambientTemperatureK + FUEL_ABOVE_AMBIENT_K;
  const level = recording.notes?.procedure === 'refuelling' ? start(channels.fuelLevel, 5) : mean(channels.fuelLevel);
  const fuelLevel = Math.min(0.98, Math.max(0, level ?? 0.5));
  if (level === undefined) missing('fuel level', 'half a tank is assumed and the size is that much less certain');
  const tankVolumeM3 = car.tankVolumeM3 ?? TANK_M3;
  if (car.tankVolumeM3 === undefined) missing('tank volume', '60 L is assumed and the size is that much less certain');
  const neckVolumeM3 = car.fillerNeckVolumeM3 ?? NECK_M3;
  const canisterVolumeM3 = car.canisterFreeVolumeM3 ?? CANISTER_M3;
  const gasVolumeM3 = tankVolumeM3 * (1 - fuelLevel) + neckVolumeM3;
  const tankSd = (car.tankVolumeM3 === undefined ? TANK_UNKNOWN_SD : TANK_SD) * tankVolumeM3 * (1 - fuelLevel);
  const levelSd = (level === undefined ? LEVEL_UNKNOWN_SD : LEVEL_SD) * tankVolumeM3;
  const reid = car.fuel?.reidVapourPressurePa ?? anySeason(car.fuel?.ethanolVolumeFraction ?? 0);
  const middle = Math.sqrt(reid.low * reid.high);
  const vapour = (t: number) => trueVapourPressure(middle, t);
  const vapourPressurePa = vapour(fuelTemperatureK);
  const vapourSensitivityPerK = Math.log(vapour(fuelTemperatureK + 1) / vapour(fuelTemperatureK - 1)) / 2;
  const temperatureSd = known === undefined ? FUEL_TEMPERATURE_UNKNOWN_SD_K : FUEL_TEMPERATURE_SD_K;
  const trend = ambientTrend(recording);
  return {
    ambientAbsPa,
    ...(trend && { ambientTrend: trend }),
    ambientTemperatureK,
    fuelTemperatureK,
    fuelTemperatureKnown: known !== undefined,
    fuelTemperatureSdK: temperatureSd,
    fuelLevel,
    levelKnown: level !== undefined,
    tankVolumeM3,
    neckVolumeM3,
    canisterVolumeM3,
    gasVolumeM3,
    gasVolumeSdLn: Math.min(0.5, Math.hypot(tankSd, levelSd) / gasVolumeM3),
    vapourPressurePa,
    // a uniform range is worth its width over sqrt(12)
    vapourPressureSdLn: Math.hypot(
      Math.log(reid.high / reid.low) / Math.sqrt(12),
      vapourSensitivityPerK * temperatureSd,
    ),
    vapourSensitivityPerK,
    warnings,
  };
}
