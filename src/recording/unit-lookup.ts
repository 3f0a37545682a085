import type { ChannelQuantity } from './own-columns.ts';

export interface AffineUnit {
  readonly symbol: string;
  readonly quantity: ChannelQuantity;
  /** SI value = factor * number + offset. */
  readonly factor: number;
  readonly offset: number;
}

const TABLE: readonly (readonly [string, ChannelQuantity, number, number, readonly string[]])[] = [
  ['Pa', 'pressure', 1, 0, ['pa', 'pascal']],
  ['hPa', 'pressure', 100, 0, ['hpa']],
  ['kPa', 'pressure', 1000, 0, ['kpa']],
  ['mbar', 'pressure', 100, 0, ['mbar', 'mb']],
  ['bar', 'pressure', 1e5, 0, ['bar']],
  ['psi', 'pressure', 6894.757293168361, 0, ['psi', 'psig', 'psia']],
  ['inH2O', 'pressure', 249.08891, 0, ['inh2o', 'inwc', 'inwg', 'inaq', '"h2o', 'iwc']],
  ['mmH2O', 'pressure', 9.80665, 0, ['mmh2o', 'mmwc']],
  ['mmHg', 'pressure', 133.322387415, 0, ['mmhg', 'torr']],
  ['inHg', 'pressure', 3386.388640341, 0, ['inhg', '"hg']],
  ['V', 'voltage', 1, 0, ['v', 'volt', 'volts']],
  ['mV', 'voltage', 0.001, 0, ['mv']],
  ['1', 'fraction', 1, 0, ['fraction', 'ratio', '1']],
  ['%', 'fraction', 0.01, 0, ['%', 'pct', 'percent', 'perc']],
  ['K', 'temperature', 1, 0, ['k', 'kelvin', 'degk']],
  ['degC', 'temperature', 1, 273.15, ['degc', 'c', '°c', 'celsius', 'ºc']],
  ['degF', 'temperature', 5 / 9, 273.15 - (32 * 5) / 9, ['degf', 'f', '°f', 'fahrenheit', 'ºf']],
  ['1/min', 'rotational-speed', 1, 0, ['1/min', 'rpm', 'min-1', 'rev/min', 'r/min']],
  ['km/h', 'speed', 1 / 3.6, 0, ['km/h', 'kmh', 'kph', 'kmph']],
  ['mph', 'speed', 0.44704, 0, ['mph', 'mi/h']],
  ['m/s', 'speed', 1, 0, ['m/s', 'mps']],
  ['L/min', 'volume-flow', 1 / 60000, 0, ['l/min', 'lpm', 'lperm', 'lpermin']],
  ['m3/s', 'volume-flow', 1, 0, ['m3/s']],
];

const BY_TEXT = new Map<string, AffineUnit>();
for (const [symbol, quantity, factor, offset, texts] of TABLE)
  for (const text of [symbol.toLowerCase(), ...texts]) BY_TEXT.set(text, { symbol, quantity, factor, offset });

/** A unit as written by people; undefined when it is none we know. */
export function lookUpUnit(text: string): AffineUnit | undefined {
  return BY_TEXT.get(
    text
      .trim()
      .toLowerCase()
      .replace(/[\s_.]/g, ''),
  );
}
