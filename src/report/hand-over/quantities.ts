/** Numbers in the units and the language of the reader; the form of `../numbers.ts`, with the decimal sign of the language. */
import type { Interval } from '../../diagnosis/finding.ts';
import { fromSi } from '../../units/convert.ts';
import { UNITS, type Unit } from '../../units/unit-table.ts';
import { fixed, NBSP } from '../numbers.ts';
import type { HandOverUnits } from './hand-over.ts';

export interface NumberStyle {
  readonly decimalSign: '.' | ',';
  readonly to: string;
  readonly under: string;
  readonly over: string;
}

export interface Quantities {
  readonly pressureUnit: string;
  readonly pascalPerUnit: number;
  readonly number: (value: number, decimals: number) => string;
  readonly pressure: (pa: number) => string;
  /** An absolute pressure, as of the day's air. */
  readonly airPressure: (pa: number) => string;
  /** "50.0 to 60.0 kPa" */
  readonly airPressureRange: (range: { readonly low: number; readonly high: number }) => string;
  readonly temperature: (kelvin: number) => string;
  readonly diameter: (mm: number) => string;
  readonly diameterNumber: (mm: number) => string;
  readonly interval: (size: Interval) => string;
  /** "0.62 (0.56 to 0.69)", in the unit of lengths, which is said elsewhere. */
  readonly intervalNumbers: (size: Interval) => string;
  readonly percent: (probability: number) => string;
  readonly litres: (m3: number) => string;
  readonly duration: (seconds: number) => string;
}

const unitOf = (symbol: string): Unit => {
  const unit = UNITS.find((row) => row.symbol === symbol);
  if (unit === undefined) throw new Error(`The unit table has no "${symbol}".`);
  return unit;
};

/** Decimals that show about 5 Pa, the step of a good sensor. */
const PRESSURE_DECIMALS = { kPa: 2, inH2O: 1, mmHg: 1, psi: 3 } as const;
const MM_PER_INCH = 25.4;

export function quantities(units: HandOverUnits, style: NumberStyle): Quantities {
  const pressure = unitOf(units.pressure);
  const temperature = unitOf(units.temperature === 'degC' ? '°C' : '°F');
  const number = (value: number, decimals: number): string => fixed(value, decimals).replace('.', style.decimalSign);
  const inMillimetres = units.length === 'mm';
  const diameterNumber = (mm: number): string =>
    inMillimetres ? number(mm, mm < 2 ? 2 : 1) : number(mm / MM_PER_INCH, 3);
  const withUnit = (text: string, symbol: string): string => `${text}${NBSP}${symbol}`;
  const inPressure = (pa: number, decimals: number): string =>
    withUnit(number(fromSi(pa, pressure), decimals), pressure.symbol);
  const airDecimals = units.pressure === 'psi' ? 2 : units.pressure === 'kPa' ? 1 : 0;
  const airPressure = (pa: number): string => inPressure(pa, airDecimals);
  const diameter = (mm: number): string => withUnit(diameterNumber(mm), units.length);
  return {
    pressureUnit: pressure.symbol,
    pascalPerUnit: pressure.factor,
    number,
    pressure: (pa) => inPressure(pa, PRESSURE_DECIMALS[units.pressure]),
    airPressure,
    airPressureRange: ({ low, high }) =>
      `${number(fromSi(low, pressure), airDecimals)} ${style.to} ${airPressure(high)}`,
    temperature: (kelvin) => withUnit(number(fromSi(kelvin, temperature), 0), temperature.symbol),
    diameter,
    diameterNumber,
    interval: (size) =>
      `${diameter(size.median)} (${diameterNumber(size.lo90)} ${style.to} ${diameterNumber(size.hi90)})`,
    intervalNumbers: (size) =>
      `${diameterNumber(size.median)} (${diameterNumber(size.lo90)} ${style.to} ${diameterNumber(size.hi90)})`,
    percent(probability) {
      if (probability < 0.001) return `${style.under} ${withUnit(number(0.1, 1), '%')}`;
      if (probability > 0.999) return `${style.over} ${withUnit(number(99.9, 1), '%')}`;
      const isNearEnd = probability < 0.01 || probability > 0.99;
      return withUnit(number(probability * 100, isNearEnd ? 1 : 0), '%');
    },
    litres: (m3) => withUnit(number(m3 * 1000, m3 < 0.01 ? 1 : 0), 'L'),
    duration: (seconds) =>
      seconds < 180 ? withUnit(number(seconds, 0), 's') : withUnit(number(seconds / 60, seconds < 600 ? 1 : 0), 'min'),
  };
}
