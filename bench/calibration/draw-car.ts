/** Draws a car, a day and a sampling from plain ranges; the finding is told all of these, so their spread decides nothing. */
import type { RandomStream } from '../../src/simulation/random.ts';
import type { Car } from '../../src/system/car.ts';

export interface CarAndDay {
  readonly car: Car;
  readonly fuelLevel: number;
  readonly ambientTemperatureK: number;
  /** Absent in half of the cases, as on many cars. */
  readonly fuelTemperatureK?: number;
  readonly barometricPa: number;
  readonly manifoldAbsPa: number;
  readonly engineSpeedRpm: number;
  readonly rateHz: number;
  /** White noise of the sensor and step of its converter [Pa]; 0 = no steps. */
  readonly noisePa: number;
  readonly stepPa: number;
  readonly duty: number;
  readonly baselineS: number;
  readonly targetGaugePa: number;
  readonly timeOutS: number;
  readonly holdS: number;
  readonly releaseS: number;
  readonly slowPa: number;
  readonly slowS: number;
}

/** Ranges of Reid vapour pressure that a season's fuel comes with [Pa], judgement. */
const SEASONS = [
  { low: 45e3, high: 60e3 },
  { low: 50e3, high: 70e3 },
  { low: 55e3, high: 95e3 },
] as const;
const RATES_HZ = [1, 2, 5, 10, 10] as const;
/** Nothing, 10 bits and 8 bits over the range of a common tank sensor [Pa]. */
const STEPS_PA = [0, 7.3, 29] as const;
/** Priors of the noise that `likelihood/noise.ts` estimates with: slow error about 3 Pa within a factor e, 1 to 30 s. */
const SLOW_CENTRE_PA = 3;
const SLOW_SD_LN = 1;
const SLOW_TIMES_S = [1, 3, 10, 30] as const;

export function drawCarAndDay(random: RandomStream): CarAndDay {
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const oneOf = <T>(list: readonly T[]): T => list[Math.floor(random.uniform() * list.length)]!;
  const ambientTemperatureK = between(268, 308);
  const fuelTemperatureK = ambientTemperatureK + between(1, 11);
  const fuelTemperatureGiven = random.uniform() < 0.5;
  const reach = oneOf([3200, 3700, 5000]);
  return {
    car: {
      schema: 'vaporwright-car-1',
      label: 'drawn car',
      layout: 'engine-vacuum',
      tankVolumeM3: between(0.04, 0.08),
      fillerNeckVolumeM3: between(0.001, 0.0025),
      canisterFreeVolumeM3: between(0.0015, 0.0035),
      pressureSensor: { minGaugePa: -reach, maxGaugePa: reach, gainTolerance: 0.02, offsetTolerancePa: 60 },
      fuel: { reidVapourPressurePa: oneOf(SEASONS) },
    },
    fuelLevel: between(0.15, 0.85),
    ambientTemperatureK,
    ...(fuelTemperatureGiven && { fuelTemperatureK }),
    barometricPa: between(85e3, 103e3),
    manifoldAbsPa: between(28e3, 50e3),
    engineSpeedRpm: between(600, 2000),
    rateHz: oneOf(RATES_HZ),
    noisePa: 8 * Math.exp(0.5 * random.normal()),
    stepPa: oneOf(STEPS_PA),
    duty: between(0.06, 0.25),
    baselineS: between(8, 20),
    targetGaugePa: -between(1700, 2700),
    timeOutS: between(40, 70),
    holdS: between(60, 120),
    releaseS: 15,
    slowPa: SLOW_CENTRE_PA * Math.exp(SLOW_SD_LN * random.normal()),
    slowS: oneOf(SLOW_TIMES_S),
  };
}
