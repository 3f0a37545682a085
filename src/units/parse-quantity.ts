/** A number with its unit, as a person types it. */
import { toSi } from './convert.ts';
import { type PressureReference, parseUnit } from './parse-unit.ts';
import type { Quantity, Unit } from './unit-table.ts';

/** A quantity understood, or what was wrong with the text. */
export type ParsedQuantity =
  | { readonly ok: true; readonly valueSi: number; readonly unit: Unit; readonly reference?: PressureReference }
  | { readonly ok: false; readonly problem: string };

const NUMBER_THEN_UNIT = /^\s*([+\-−]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?)\s*(.*?)\s*$/i;

/**
 * SI value of a text such as "-8 inH2O", "0.5 mm" or "72 °F".
 *
 * Valid: one number and one unit; a comma is read as a decimal comma.
 * Source: the unit table.
 * @param text number and unit as typed [-]
 * @param quantity what must be measured [-]
 * @returns the SI value and the unit found, or what was wrong [-]
 */
export function parseQuantity(text: string, quantity: Quantity): ParsedQuantity {
  const match = NUMBER_THEN_UNIT.exec(text);
  if (match === null) {
    return {
      ok: false,
      problem: `"${text}" does not start with a number; expected a number and a unit of ${quantity}`,
    };
  }
  const [, number = '', unitText = ''] = match;
  if (unitText === '') {
    return { ok: false, problem: `"${text}" has no unit; add a unit of ${quantity} after the number` };
  }
  const parsed = parseUnit(unitText, quantity);
  if (!parsed.ok) return parsed;
  const value = Number(number.replace('−', '-').replace(',', '.'));
  return { ...parsed, valueSi: toSi(value, parsed.unit) };
}
