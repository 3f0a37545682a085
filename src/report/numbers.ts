/** Numbers as the sheet prints them: always with unit, always the interval in the same form. */
import type { Interval } from '../diagnosis/finding.ts';

const MINUS = '\u2212';
/** No-break space, so that a number never parts from its unit at a line's end (the faces have no narrow one). */
export const NBSP = '\u00a0';

/** A true minus sign, and no "-0.0". */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  const isZero = Number(text) === 0;
  return isZero ? text.replace('-', '') : text.replace('-', MINUS);
}

/** Probabilities at the ends are said as bounds: nothing here is certain. */
export function percent(probability: number): string {
  if (probability < 0.001) return `under 0.1${NBSP}%`;
  if (probability > 0.999) return `over 99.9${NBSP}%`;
  if (probability < 0.01 || probability > 0.99) return `${(probability * 100).toFixed(1)}${NBSP}%`;
  return `${Math.round(probability * 100)}${NBSP}%`;
}

/** A share that is commanded or measured, and no probability: 100 % is said. */
export const wholePercent = (share: number): string => `${Math.round(share * 100)}${NBSP}%`;

/** Diameter in millimetres: two decimals below 2 mm, one above. */
export const millimetres = (diameterMm: number): string => diameterMm.toFixed(diameterMm < 2 ? 2 : 1);

/** "0.62 mm (0.56 to 0.69)". */
export const intervalInWords = (size: Interval): string =>
  `${millimetres(size.median)}${NBSP}mm (${millimetres(size.lo90)} to ${millimetres(size.hi90)})`;

/** Seconds as a person says them. */
export function duration(seconds: number): string {
  if (seconds < 180) return `${Math.round(seconds)}${NBSP}s`;
  return `${(seconds / 60).toFixed(seconds < 600 ? 1 : 0)}${NBSP}min`;
}

export const kilopascal = (pa: number, decimals = 2): string => `${fixed(pa / 1000, decimals)}${NBSP}kPa`;

/** Absolute zero of the Celsius scale, K: exact by definition. */
const CELSIUS_ZERO_K = 273.15;
export const celsius = (temperatureK: number): string => `${fixed(temperatureK - CELSIUS_ZERO_K, 0)}${NBSP}°C`;
