import { type CarState, newCarState } from '../../src/capture/simulated-car/car-state.ts';

const still = (value: number) => new Float64Array(2).fill(value);

/** A car that stands still, so that what it answers does not depend on when it is asked. */
export const goldenCar = (): CarState =>
  newCarState(
    {
      label: 'standing still',
      timeS: Float64Array.of(0, 1),
      channels: {
        tankPressureGaugePa: still(-125),
        purgeDuty: still(0.2),
        engineSpeedRpm: still(750),
        manifoldAbsPa: still(35_000),
        vehicleSpeedMPerS: still(0),
        shortTrim: still(-0.0234375),
        fuelLevel: still(0.6),
        barometricPa: still(101_000),
      },
    },
    {
      vin: '1M8GDM9AXKP042788',
      codes: { confirmed: ['P0442', 'P0456'], pending: ['P0441'], permanent: ['P0455'] },
      lampOn: true,
      incompleteMonitors: ['evaporative system'],
      warmUpsSinceClear: 15,
      distanceSinceClearKm: 50,
    },
  );
