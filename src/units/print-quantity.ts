/** Quantities as text: value and unit, and an estimate with its interval. */
import { fromSi } from './convert.ts';
import type { Unit } from './unit-table.ts';

/** An estimate and the ends of its interval, all in SI. */
export interface IntervalSi {
  readonly estimateSi: number;
  readonly lowSi: number;
  readonly highSi: number;
}

/** A number with fixed decimals, without a negative zero. */
function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/**
 * Value with its unit, as "0.62 mm".
 *
 * Valid: finite values; a unit written as a bare number ("1") is left out.
 * Source: SI brochure, a space between number and unit.
 * @param valueSi value [SI]
 * @param unit unit to print in [-]
 * @param decimals decimals, the unit's usual ones unless given [-]
 * @returns text [-]
 */
export function printQuantity(valueSi: number, unit: Unit, decimals: number = unit.decimals): string {
  return withUnit(fixed(fromSi(valueSi, unit), decimals), unit);
}

/**
 * Estimate with its interval, as "0.62 mm (0.56 to 0.69)".
 *
 * Valid: finite values, low <= estimate <= high.
 * Source: convention of this project.
 * @param interval estimate and ends [SI]
 * @param unit unit to print in [-]
 * @param decimals decimals, the unit's usual ones unless given [-]
 * @returns text [-]
 */
export function printInterval(interval: IntervalSi, unit: Unit, decimals: number = unit.decimals): string {
  const [estimate, low, high] = [interval.estimateSi, interval.lowSi, interval.highSi].map((value) =>
    fixed(fromSi(value, unit), decimals),
  );
  return `${withUnit(estimate as string, unit)} (${low} to ${high})`;
}

/**
 * Decimals with which a number shows a count of significant figures, never less than none.
 *
 * Valid: finite numbers; zero gets none.
 * Source: definition of significant figures.
 * @param value number in the unit to print [unit]
 * @param significantFigures figures wanted [-]
 * @returns decimals, 0 to 12 [-]
 */
export function decimalsForFigures(value: number, significantFigures: number): number {
  if (value === 0 || !Number.isFinite(value)) return 0;
  // toExponential has rounded already, so 0.9996 to three figures counts as 1.00.
  const exponent = Number(value.toExponential(significantFigures - 1).split('e')[1]);
  return Math.min(12, Math.max(0, significantFigures - 1 - exponent));
}

function withUnit(number: string, unit: Unit): string {
  return unit.symbol === '1' ? number : `${number} ${unit.symbol}`;
}
