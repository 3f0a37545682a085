/**
 * Typical values in prose ("hold 1.2 to 2 kPa (5 to 8 inH2O)") in the units that the reader has chosen. A second statement of
 * the same value, in brackets behind it, gives way. Such values are rough: two digits say what is known of them.
 */
import { fromSi, toSi } from './convert.ts';
import { unitBySymbol } from './parse-unit.ts';
import type { Unit } from './unit-table.ts';

export interface UnitsOfText {
  readonly pressure: string;
  readonly length: string;
  readonly temperature: string;
  /** A number in the reader's language. */
  readonly number: (value: number, decimals: number) => string;
  /** A unit as it is printed. */
  readonly symbol: (unit: string) => string;
}

const NUMBER = '[−-]?\\d+(?:[.,]\\d+)?';
const SPAN = `(${NUMBER})(?:([\\s\\u00a0](?:to|bis)[\\s\\u00a0])(${NUMBER}))?`;
/** "K" stands in these texts for a difference of temperatures alone. */
const UNIT = '(kPa|Pa|inH2O|inHg|mmHg|psi|mm|°C|K)(?![\\p{L}\\d])';
/** Words between a value and its second statement. */
const BETWEEN = '((?:[\\s\\u00a0](?:of vacuum|Unterdruck))?)';
const TWICE = `(?:[\\s\\u00a0]\\(${SPAN}[\\s\\u00a0](inH2O|inHg|psi|in)\\))?`;
const QUANTITY = new RegExp(`(?<![\\p{L}\\d.,])${SPAN}[\\s\\u00a0]${UNIT}(?:${BETWEEN}${TWICE})`, 'gu');

const KINDS: Readonly<Record<string, 'pressure' | 'length' | 'temperature'>> = {
  kPa: 'pressure',
  Pa: 'pressure',
  inH2O: 'pressure',
  inHg: 'pressure',
  mmHg: 'pressure',
  psi: 'pressure',
  mm: 'length',
  '°C': 'temperature',
  K: 'temperature',
};
const DIGITS = 2;

const numberIn = (text: string): number => Number(text.replace('−', '-').replace(',', '.'));

/** Two digits, without zeros that say nothing. */
function rounded(value: number): { readonly value: number; readonly decimals: number } {
  if (value === 0) return { value: 0, decimals: 0 };
  const most = Math.max(0, DIGITS - 1 - Math.floor(Math.log10(Math.abs(value))));
  const shown = Number(value.toFixed(most));
  return { value: shown, decimals: (String(shown).split('.')[1] ?? '').length };
}

/**
 * The same text with its values in the units chosen.
 *
 * Valid: values with a unit of pressure, length (mm) or temperature (K for differences); every other word stays as it is.
 * Source: the units' own rows; two digits are judgement.
 * @param text prose with typical values [-]
 * @param units units and number form of the reader [-]
 * @returns the text to show [-]
 */
export function textInUnits(text: string, units: UnitsOfText): string {
  const say = (value: number): string => {
    const { value: shown, decimals } = rounded(value);
    return units.number(shown, decimals);
  };
  return text.replace(QUANTITY, (...found: (string | undefined)[]) => {
    const [whole, low, to = '', high, from, between = '', low2, , high2, from2] = found;
    const kind = KINDS[from!]!;
    const isDifference = from === 'K';
    const chosen = units[kind];
    const shownUnit = units.symbol(chosen);
    const printed = (one: string, other: string | undefined, convert: (value: number) => number): string =>
      `${say(convert(numberIn(one)))}${other === undefined ? '' : `${to}${say(convert(numberIn(other)))}`}\u00a0${shownUnit}${between}`;
    if (low2 !== undefined && from2 === chosen) return printed(low2, high2, (value) => value);
    if (from === chosen) return low2 === undefined ? whole!.replace(from, shownUnit) : printed(low!, high, (v) => v);
    const a = unitBySymbol(from!);
    const b = unitBySymbol(chosen);
    return printed(low!, high, (value) => (isDifference ? difference(value, b) : fromSi(toSi(value, a), b)));
  });
}

/** A difference in kelvin in a unit of temperature: its zero does not matter. */
const difference = (kelvin: number, unit: Unit): number => kelvin / unit.factor;
