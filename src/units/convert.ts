/** Conversion between a unit and SI. */
import type { Unit } from './unit-table.ts';

/**
 * SI value of a number in a unit.
 *
 * Valid: any finite number.
 * Source: SI; the unit's own row.
 * @param value number in the unit [unit]
 * @param unit row of the unit table [-]
 * @returns SI value [SI]
 */
export function toSi(value: number, unit: Unit): number {
  return value * unit.factor + unit.offset;
}

/**
 * Number in a unit of an SI value: inverse of toSi.
 *
 * Valid: any finite number.
 * Source: SI; the unit's own row.
 * @param valueSi SI value [SI]
 * @param unit row of the unit table [-]
 * @returns number in the unit [unit]
 */
export function fromSi(valueSi: number, unit: Unit): number {
  return (valueSi - unit.offset) / unit.factor;
}

/**
 * Number in one unit from a number in another of the same quantity.
 *
 * Valid: both units measure the same; otherwise it throws, because that is a mistake in the program.
 * Source: SI; the units' own rows.
 * @param value number in the first unit [from]
 * @param from unit of the number [-]
 * @param to unit wanted [-]
 * @returns number in the second unit [to]
 */
export function convert(value: number, from: Unit, to: Unit): number {
  if (from.quantity !== to.quantity) {
    throw new RangeError(`${from.symbol} measures ${from.quantity}, ${to.symbol} measures ${to.quantity}`);
  }
  return fromSi(toSi(value, from), to);
}
