import { type ForecastHour, temperatureAt } from './forecast.ts';

export interface EngineOffSituation {
  readonly fuelLevel: number;
  readonly ambientAbsPa: number;
  /** Ambient temperature at key-off and at the end of the test, K. */
  readonly ambientFromK: number;
  readonly ambientToK: number;
  /** Fuel temperature at key-off, K. */
  readonly fuelTemperatureK: number;
  /** Heat that the warm exhaust still puts into the fuel over the first ten minutes, W. */
  readonly heatW: number;
  /** Gauge pressures at which the car calls it tight, Pa. */
  readonly passHighGaugePa?: number;
  readonly passLowGaugePa?: number;
}

/** From key-off to the end of the test. */
export const SEALED_S = 2520;
/** Fuel above the air at key-off, after a drive (judgement). */
const FUEL_ABOVE_AIR_K = 8;
const EXHAUST_HEAT_W = 250; // judgement
const HALF_FULL = 0.5;
const SEA_LEVEL_PA = 101_325;

/** The situation behind a drive that ends at `stopMs`; absent where the forecast does not reach that far. */
export function situationAfter(
  forecast: readonly ForecastHour[],
  stopMs: number,
  fuelLevel: number | undefined,
): EngineOffSituation | undefined {
  const ambientFromK = temperatureAt(forecast, stopMs);
  const ambientToK = temperatureAt(forecast, stopMs + SEALED_S * 1000);
  if (ambientFromK === undefined || ambientToK === undefined) return undefined;
  return {
    fuelLevel: fuelLevel ?? HALF_FULL,
    ambientAbsPa: SEA_LEVEL_PA,
    ambientFromK,
    ambientToK,
    fuelTemperatureK: ambientFromK + FUEL_ABOVE_AIR_K,
    heatW: EXHAUST_HEAT_W,
  };
}
