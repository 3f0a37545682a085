import { guessUnitFromValues, mustBeAbsolute } from './guess-unit.ts';
import type { ColumnMapping } from './mapping.ts';
import { OWN_COLUMNS } from './own-columns.ts';
import type { RawColumn } from './raw-column.ts';
import { type ColumnUnit, lookUpUnit } from './unit-lookup.ts';
import { largestOf, rangeOf } from './value-range.ts';

/** A column in SI units with the mapping that led there, or the reason why it cannot be read. */
export type ConvertedColumn =
  | { readonly ok: true; readonly values: Float64Array; readonly mapping: ColumnMapping; readonly unreadable: number }
  | { readonly ok: false; readonly found: string; readonly expected: string; readonly whatToDo: string };

const isSwitchNumber = (value: number): boolean => value === 0 || value === 1;

function convertSwitch(column: RawColumn, values: Float64Array): ConvertedColumn {
  let present = 0;
  let binary = 0;
  let percent = 0;
  let ones = 0;
  let hundreds = 0;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    present++;
    if (isSwitchNumber(value)) binary++;
    if (value >= 0 && value <= 100) percent++;
    if (value === 1) ones++;
    if (value === 100) hundreds++;
  }
  // A stray number in a column of 0 and 1 is no percentage, but a lone 100 among zeros is.
  const asPercent = binary < 0.9 * present || (ones === 0 && hundreds > 0);
  if (asPercent && percent < 0.9 * present)
    return {
      ok: false,
      found: 'numbers other than 0 and 1 or 0 to 100',
      expected: 'an on/off command',
      whatToDo: 'Set its channel to null in the mapping, or record the command as 0 and 1',
    };
  const inverted = column.mapping.inverted === true;
  let unreadable = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    const on =
      asPercent && value >= 0 && value <= 100 ? (value > 50 ? 1 : 0) : isSwitchNumber(value) ? value : undefined;
    if (on === undefined) {
      values[i] = Number.NaN;
      unreadable++;
    } else values[i] = inverted ? 1 - on : on;
  }
  return { ok: true, values, mapping: column.mapping, unreadable };
}

function scale(values: Float64Array, unit: ColumnUnit): void {
  const { factor, offset } = unit;
  // Powers of ten divide exactly, so that a file written and read again gives the same doubles.
  const divisor = Math.round(1 / factor);
  if (factor < 1 && 1 / divisor === factor)
    for (let i = 0; i < values.length; i++) values[i] = values[i]! / divisor + offset;
  else if (factor !== 1 || offset !== 0)
    for (let i = 0; i < values.length; i++) values[i] = values[i]! * factor + offset;
}

/** Turns the numbers of a column into SI; takes the unit from the mapping or, without one, from the numbers. */
export function convertColumn(column: RawColumn, values: Float64Array): ConvertedColumn {
  const { channel } = column;
  const { quantity } = OWN_COLUMNS[channel];
  if (quantity === 'switch') return convertSwitch(column, values);
  const mapping: ColumnMapping = { ...column.mapping };
  let unit = mapping.unit === undefined ? undefined : lookUpUnit(mapping.unit);
  if (mapping.unit !== undefined && unit?.quantity !== quantity)
    return {
      ok: false,
      found: `the unit "${mapping.unit}"`,
      expected: `a unit of ${quantity}, as ${OWN_COLUMNS[channel].unit ?? '1'}`,
      whatToDo: 'Correct the unit in the mapping',
    };
  if (unit === undefined) {
    const range = rangeOf(values);
    // A column without a single number needs no unit.
    const guess = range === undefined ? undefined : guessUnitFromValues(channel, range, largestOf(values));
    if (guess) {
      unit = lookUpUnit(guess.unit);
      mapping.unit = guess.unit;
      if (guess.reference) mapping.reference ??= guess.reference;
      mapping.confidence = Math.min(mapping.confidence ?? 1, guess.confidence);
      mapping.reasons = [...(mapping.reasons ?? []), guess.reason];
    } else if (range !== undefined)
      return {
        ok: false,
        found: `numbers from ${range.min} to ${range.max} without a unit`,
        expected: `a unit of ${quantity} that fits them alone`,
        whatToDo: 'Put the unit in brackets behind the header, or give it in a mapping file',
      };
  }
  if (unit) scale(values, unit);
  if (channel === 'tankPressureGaugePa' || channel === 'canisterPressureGaugePa' || channel === 'pumpPressureGaugePa') {
    const si = mapping.reference === undefined ? rangeOf(values) : undefined;
    if (si) {
      mapping.reference = mustBeAbsolute(si.median) ? 'absolute' : 'gauge';
      mapping.reasons = [...(mapping.reasons ?? []), `a median of ${Math.round(si.median)} Pa is ${mapping.reference}`];
    }
  }
  return { ok: true, values, mapping, unreadable: 0 };
}
