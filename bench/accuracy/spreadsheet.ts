/**
 * The method that a spreadsheet would use to size a hole, to compare with: the slope of the pressure at the start of
 * the hold, the ideal-gas law at one temperature, and the flow through an orifice. It knows no evaporation.
 */
import { GAMMA_AIR, P_ATM, REFERENCE_TEMPERATURE_K, SPECIFIC_GAS_CONSTANT_AIR } from '../../src/physics/constants.ts';
import { diameterFromEffectiveArea } from '../../src/physics/equivalent-diameter.ts';
import { orificeAreaFromMassFlow } from '../../src/physics/orifice.ts';
import { isothermalPressureRate } from '../../src/physics/vacuum-decay.ts';
import { findPhases } from '../../src/recording/phases.ts';
import type { ChannelName, Recording } from '../../src/recording/recording.ts';
import type { Car } from '../../src/system/car.ts';
import { mean } from './statistics.ts';

/** The start of the hold: this long [s], or until this share of the vacuum is gone. Judgement. */
const START_S = 10;
const START_SHARE_LOST = 0.2;
/** Fewer readings make no slope. Judgement. */
const FEWEST_READINGS = 5;
/** Below this vacuum the flow law has nothing to work with [Pa]. Judgement. */
const LEAST_VACUUM_PA = 50;

interface Reading {
  readonly t: number;
  readonly p: number;
}

/** Readings from a time on until the start of the hold is over. */
function readingsFrom(recording: Recording, fromS: number, toS: number): Reading[] {
  const pressure = recording.channels.tankPressureGaugePa ?? [];
  const readings: Reading[] = [];
  for (let i = 0; i < pressure.length; i++) {
    const t = recording.timeS[i]!;
    const p = pressure[i]!;
    if (t < fromS || Number.isNaN(p)) continue;
    if (t > Math.min(toS, fromS + START_S)) break;
    const first = readings[0]?.p ?? p;
    if (readings.length >= FEWEST_READINGS && p > (1 - START_SHARE_LOST) * first) break;
    readings.push({ t, p });
  }
  return readings;
}

/** A large hole empties the vacuum while the gas still settles; then the settling is all there is to measure. */
function startOfHold(recording: Recording): Reading[] | undefined {
  const phases = findPhases(recording);
  const hold = phases.find((phase) => phase.kind === 'hold');
  const settle = phases.find((phase) => phase.kind === 'settle');
  const enough = (readings: readonly Reading[]) =>
    readings.length >= FEWEST_READINGS && mean(readings.map((r) => r.p))! <= -LEAST_VACUUM_PA;
  const starts = [hold?.fromS, settle?.fromS].filter((t) => t !== undefined);
  const end = hold?.toS ?? settle?.toS ?? 0;
  return starts.map((t) => readingsFrom(recording, t, end)).find(enough);
}

/** Diameter of the hole [mm]; 0 where the vacuum does not fall; undefined where there is no vacuum to measure. */
export function spreadsheetDiameterMm(car: Car, recording: Recording): number | undefined {
  const readings = startOfHold(recording);
  if (!readings || car.tankVolumeM3 === undefined) return undefined;
  const gaugePa = mean(readings.map((r) => r.p))!;
  const risePaPerS = slope(readings);
  if (risePaPerS <= 0) return 0;

  const level = average(recording, 'fuelLevel') ?? 0.5;
  const gasVolumeM3 = car.tankVolumeM3 * (1 - level) + (car.fillerNeckVolumeM3 ?? 0) + (car.canisterFreeVolumeM3 ?? 0);
  const temperatureK = average(recording, 'ambientTemperatureK') ?? REFERENCE_TEMPERATURE_K;
  const ambientAbsPa = average(recording, 'barometricPa') ?? P_ATM;
  const massFlowKgPerS = risePaPerS / isothermalPressureRate(1, gasVolumeM3, temperatureK, SPECIFIC_GAS_CONSTANT_AIR);
  const areaM2 = orificeAreaFromMassFlow(
    massFlowKgPerS,
    ambientAbsPa,
    ambientAbsPa + gaugePa,
    temperatureK,
    SPECIFIC_GAS_CONSTANT_AIR,
    GAMMA_AIR,
  );
  return areaM2 === undefined ? undefined : 1e3 * diameterFromEffectiveArea(areaM2);
}

/** Slope of the straight line by least squares [Pa/s]. */
function slope(readings: readonly Reading[]): number {
  const t0 = mean(readings.map((r) => r.t))!;
  const p0 = mean(readings.map((r) => r.p))!;
  const spread = readings.reduce((sum, r) => sum + (r.t - t0) ** 2, 0);
  return readings.reduce((sum, r) => sum + (r.t - t0) * (r.p - p0), 0) / spread;
}

function average(recording: Recording, channel: ChannelName): number | undefined {
  return mean([...(recording.channels[channel] ?? [])].filter((x) => !Number.isNaN(x)));
}
