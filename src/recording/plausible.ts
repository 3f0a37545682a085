import type { ChannelName } from './recording.ts';

/** Outside these (judgement, wide) a channel was most likely read with a wrong unit or column. SI units. */
export const PLAUSIBLE_RANGE: Readonly<Partial<Record<ChannelName, readonly [number, number]>>> = {
  // A sealed tank works up to about 40 kPa; more is no vapour system.
  tankPressureGaugePa: [-20_000, 60_000],
  tankPressureSensorV: [-0.2, 5.5],
  canisterPressureGaugePa: [-20_000, 20_000],
  pumpPressureGaugePa: [-20_000, 20_000],
  purgeDuty: [-0.01, 1.01],
  fuelLevel: [-0.02, 1.2],
  ambientTemperatureK: [220, 335],
  fuelTemperatureK: [220, 360],
  coolantTemperatureK: [220, 420],
  intakeTemperatureK: [220, 420],
  barometricPa: [50_000, 112_000],
  manifoldAbsPa: [0, 350_000],
  engineSpeedRpm: [0, 12_000],
  vehicleSpeedMPerS: [-1, 90],
  shortTrim: [-1, 1],
  longTrim: [-1, 1],
  fillFlowM3PerS: [0, 0.003],
};
