import type { ChannelName } from './recording.ts';

export interface UnitGuess {
  readonly unit: string;
  readonly reference?: 'gauge' | 'absolute';
  readonly confidence: number;
  readonly reason: string;
}

/** What is known of a column's numbers; of a long column without its outer 1 %. */
export interface ValueRange {
  readonly min: number;
  readonly max: number;
  readonly median: number;
}

/** Ambient pressure at any place where cars drive, in the units that loggers write. */
const AMBIENT: readonly (readonly [string, number, number])[] = [
  ['kPa', 60, 110],
  ['Pa', 60_000, 110_000],
  ['hPa', 590, 1100],
  ['inHg', 17.7, 32],
  ['psi', 8.7, 16],
  ['bar', 0.59, 1.1],
];

const ambientUnit = (median: number): string | undefined =>
  AMBIENT.find(([, low, high]) => median >= low && median <= high)?.[0];

/** True when a number in this SI pressure can only be absolute: a tank that stands gauge 60 kPa has burst. */
export const mustBeAbsolute = (medianPa: number): boolean => medianPa > 60_000 && medianPa < 115_000;

const text = (x: number): string => String(Number(x.toPrecision(4)));

/** Guesses a unit that no header gave, from the range of the numbers; undefined when they fit several. */
export function guessUnitFromValues(
  channel: ChannelName,
  range: ValueRange,
  largestOfAll: number,
): UnitGuess | undefined {
  const { min, max, median } = range;
  const largest = Math.max(Math.abs(min), Math.abs(max));
  const span = `numbers from ${text(min)} to ${text(max)}`;
  switch (channel) {
    case 'tankPressureGaugePa':
    case 'canisterPressureGaugePa':
    case 'pumpPressureGaugePa': {
      const unit = min > 0.5 * max && max > 0 ? ambientUnit(median) : undefined;
      if (unit)
        return { unit, reference: 'absolute', confidence: 0.7, reason: `${span} fit ambient pressure in ${unit}` };
      // No unit larger than the pascal gives numbers above 500 within the range of a tank sensor.
      if (largest > 500) return { unit: 'Pa', reference: 'gauge', confidence: 0.75, reason: `${span} fit Pa only` };
      return undefined;
    }
    case 'barometricPa': {
      const unit = ambientUnit(median);
      return unit === undefined
        ? undefined
        : { unit, confidence: 0.85, reason: `${span} fit ambient pressure in ${unit}` };
    }
    case 'manifoldAbsPa':
      if (max >= 40 && max <= 320 && min > 5) return { unit: 'kPa', confidence: 0.8, reason: `${span} fit kPa` };
      // An engine that idles throughout: above ambient in inHg, or boosted without a pause in psi, is far less likely.
      if (max > 32 && max < 40 && min > 5) return { unit: 'kPa', confidence: 0.6, reason: `${span} fit kPa at idle` };
      return ambientUnit(max) === 'Pa' || max > 10_000
        ? { unit: 'Pa', confidence: 0.8, reason: `${span} fit Pa` }
        : max > 320
          ? { unit: 'hPa', confidence: 0.7, reason: `${span} fit hPa` }
          : undefined;
    case 'ambientTemperatureK':
    case 'fuelTemperatureK':
    case 'intakeTemperatureK':
    case 'coolantTemperatureK': {
      if (min > 200) return { unit: 'K', confidence: 0.8, reason: `${span} fit kelvin` };
      const hottestC = channel === 'coolantTemperatureK' ? 125 : channel === 'intakeTemperatureK' ? 80 : 55;
      if (max > hottestC) return { unit: '°F', confidence: 0.7, reason: `${span} are too hot for °C` };
      return { unit: '°C', confidence: 0.6, reason: `no unit is given; ${span} are read as °C, but may be °F` };
    }
    case 'purgeDuty':
    case 'fuelLevel':
      // A purge valve may work for a moment only, so its very largest number counts.
      return (channel === 'purgeDuty' ? largestOfAll : max) <= 1 && largestOfAll > 0
        ? { unit: '1', confidence: 0.7, reason: `${span} fit a fraction` }
        : { unit: '%', confidence: 0.8, reason: `${span} fit percent` };
    case 'shortTrim':
    case 'longTrim':
      return { unit: '%', confidence: 0.7, reason: 'no unit is given; trims are written in percent' };
    case 'vehicleSpeedMPerS':
      return { unit: 'km/h', confidence: 0.6, reason: 'no unit is given; km/h is taken, but it may be mph' };
    case 'engineSpeedRpm':
      return { unit: '1/min', confidence: 0.95, reason: 'engine speed is written in 1/min' };
    case 'tankPressureSensorV':
      return max > 20
        ? { unit: 'mV', confidence: 0.7, reason: `${span} are too large for V` }
        : { unit: 'V', confidence: 0.9, reason: `${span} fit V` };
    case 'fillFlowM3PerS':
      return { unit: 'L/min', confidence: 0.6, reason: 'no unit is given; L/min is taken' };
    default:
      return undefined;
  }
}
