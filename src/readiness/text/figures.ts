/** Figures of the readiness room as a reader has them: one choice of units and one decimal sign for commands, pages and paper. */
import { CHANNELS, type ChannelName } from '../../recording/recording.ts';
import { fromSi } from '../../units/convert.ts';
import { unitBySymbol } from '../../units/parse-unit.ts';

export interface FigureChoice {
  readonly temperature: '°C' | '°F';
  readonly distance: 'km' | 'mi';
  readonly decimalSign: '.' | ',';
  /** Between number and unit. */
  readonly space: string;
}

export interface ReadinessFigures {
  /** A channel's value as a technician reads it. */
  readonly of: (channel: ChannelName, value: number) => string;
  readonly temperature: (kelvin: number) => string;
  /** A difference of temperatures. */
  readonly kelvins: (kelvin: number) => string;
  /** Seconds up to two minutes, then minutes, then hours. */
  readonly duration: (seconds: number) => string;
  readonly distance: (metres: number) => string;
  readonly percent: (fraction: number, decimals?: number) => string;
  readonly pascals: (pa: number) => string;
  readonly number: (value: number, decimals: number) => string;
}

/** What a terminal prints. */
export const PLAIN_METRIC: FigureChoice = { temperature: '°C', distance: 'km', decimalSign: '.', space: ' ' };

const METRE_PER_KM = 1000;

export function readinessFigures({ temperature, distance, decimalSign, space }: FigureChoice): ReadinessFigures {
  const number = (value: number, decimals: number): string => {
    const fixed = value.toFixed(decimals);
    return (Number(fixed) === 0 ? fixed.replace('-', '') : fixed).replace('-', '−').replace('.', decimalSign);
  };
  const withUnit = (text: string, unit: string): string => `${text}${space}${unit}`;
  const mile = unitBySymbol('mi').factor;
  const degree = unitBySymbol(temperature);
  const temperatureOf = (kelvin: number): string => withUnit(number(fromSi(kelvin, degree), 0), temperature);
  const pascals = (pa: number): string => withUnit(number(pa, 0), 'Pa');
  const percent = (fraction: number, decimals = 0): string => withUnit(number(100 * fraction, decimals), '%');
  return {
    number,
    temperature: temperatureOf,
    kelvins: (kelvin) =>
      temperature === '°C' ? withUnit(number(kelvin, 0), 'K') : withUnit(number(kelvin / degree.factor, 0), '°F'),
    duration: (seconds) => {
      if (seconds < 120) return withUnit(number(seconds, 0), 's');
      if (seconds < 2 * 3600) return withUnit(number(seconds / 60, 0), 'min');
      const hours = seconds / 3600;
      return withUnit(number(hours, Math.abs(hours - Math.round(hours)) < 0.05 ? 0 : 1), 'h');
    },
    distance: (metres) => withUnit(number(metres / (distance === 'km' ? METRE_PER_KM : mile), 0), distance),
    percent,
    pascals,
    of: (channel, value) => {
      const unit = CHANNELS[channel];
      if (unit === 'K') return temperatureOf(value);
      if (channel === 'vehicleSpeedMPerS')
        return distance === 'km'
          ? withUnit(number(value * 3.6, 0), 'km/h')
          : withUnit(number((value * 3600) / mile, 0), 'mph');
      if (channel === 'barometricPa' || channel === 'manifoldAbsPa') return withUnit(number(value / 1000, 0), 'kPa');
      // A gauge of 255 steps tells tenths; a limit is whole.
      if (unit.startsWith('fraction'))
        return percent(value, Math.abs(100 * value - Math.round(100 * value)) < 0.05 ? 0 : 1);
      if (unit.startsWith('Pa')) return pascals(value);
      return withUnit(number(value, 0), unit);
    },
  };
}
