import { blendReidVapourPressure } from '../physics/fuel-vapour.ts';
import type { Car } from './car.ts';
import {
  defaultParameters,
  FILL_LIMIT_DIAMETER_M,
  FILL_LIMIT_DIAMETER_RECOVERY_M,
  VAPOUR_LINE_DIAMETER_M,
  VAPOUR_LINE_DIAMETER_RECOVERY_M,
  WIDE_SENSOR_MAX_GAUGE_PA,
  WIDE_SENSOR_MIN_GAUGE_PA,
} from './defaults.ts';
import type { SystemParameters } from './parameters.ts';

/** A canister gives its gas volume to ports and hoses in this share [-]. Source: judgement. */
const HEAD_SHARE_OF_CANISTER = 0.2;

/** The fit of blending reaches so far [volume of ethanol over volume of blend]. */
const BLEND_REACH = 0.15;

const blended = (petrolRvpPa: number, ethanol: number): number =>
  blendReidVapourPressure(petrolRvpPa, Math.min(BLEND_REACH, ethanol));

/**
 * Nominal parameters of a car: what its file tells, and for the rest the project's defaults.
 *
 * Valid: any car file that the schema accepts; a range (fuel volatility) gives its geometric middle.
 * Source: none, it only carries values over.
 * @param car what is known of the car
 * @returns a fresh set of parameters, SI units
 */
export function carParameters(car: Car): SystemParameters {
  const p = defaultParameters();
  const { tank, canister, fuel, filler, sensor, tankVent } = p;
  if (car.tankVolumeM3 !== undefined) {
    const scale = car.tankVolumeM3 / tank.shellVolumeM3;
    tank.shellVolumeM3 = car.tankVolumeM3;
    // Same shape: surface and wall grow with the two-thirds power of the volume.
    tank.surfaceAreaM2 *= scale ** (2 / 3);
    tank.gasToWallWPerK *= scale ** (2 / 3);
    tank.gasToFuelWPerK *= scale ** (2 / 3);
    tank.fuelToAmbientWPerK *= scale ** (2 / 3);
  }
  if (car.fillerNeckVolumeM3 !== undefined) tank.neckVolumeM3 = car.fillerNeckVolumeM3;
  if (car.canisterFreeVolumeM3 !== undefined) {
    const scale = car.canisterFreeVolumeM3 / (canister.gasVolumeM3 + canister.headVolumeM3);
    canister.headVolumeM3 = HEAD_SHARE_OF_CANISTER * car.canisterFreeVolumeM3;
    canister.gasVolumeM3 = (1 - HEAD_SHARE_OF_CANISTER) * car.canisterFreeVolumeM3;
    canister.carbonKg *= scale;
    canister.heatCapacityJPerK *= scale;
  }
  const rvp = car.fuel?.reidVapourPressurePa;
  const ethanol = car.fuel?.ethanolVolumeFraction;
  if (rvp !== undefined) fuel.reidVapourPressurePa = Math.sqrt(rvp.low * rvp.high);
  // A stated range is that of the fuel as sold; without one, ethanol shifts the usual fuel's.
  else if (ethanol !== undefined)
    fuel.reidVapourPressurePa +=
      blended(fuel.reidVapourPressurePa, ethanol) - blended(fuel.reidVapourPressurePa, fuel.ethanolVolumeFraction);
  if (ethanol !== undefined) fuel.ethanolVolumeFraction = ethanol;
  if (car.filler !== undefined) filler.closure = car.filler;
  filler.recovery = car.onBoardRefuellingRecovery ?? true;
  tankVent.fillLimitDiameterM = filler.recovery ? FILL_LIMIT_DIAMETER_RECOVERY_M : FILL_LIMIT_DIAMETER_M;
  tankVent.lineDiameterM = filler.recovery ? VAPOUR_LINE_DIAMETER_RECOVERY_M : VAPOUR_LINE_DIAMETER_M;
  if (car.pressureSensor !== undefined) {
    sensor.minGaugePa = car.pressureSensor.minGaugePa;
    sensor.maxGaugePa = car.pressureSensor.maxGaugePa;
  } else if (car.layout === 'sealed-tank') {
    sensor.minGaugePa = WIDE_SENSOR_MIN_GAUGE_PA;
    sensor.maxGaugePa = WIDE_SENSOR_MAX_GAUGE_PA;
  }
  return p;
}
