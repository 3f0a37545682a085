import { type PressureReference, parseUnit } from '../units/parse-unit.ts';
import type { Quantity } from '../units/unit-table.ts';

/** A unit of a column: value in the channel's unit = factor * number + offset. */
export interface ColumnUnit {
  readonly symbol: string;
  readonly quantity: Quantity;
  readonly factor: number;
  readonly offset: number;
  readonly reference?: PressureReference;
}

const SECONDS_PER_MINUTE = 60;

/** A unit as written by people; undefined when it is none we know. */
export function lookUpUnit(text: string): ColumnUnit | undefined {
  const parsed = parseUnit(text);
  if (!parsed.ok || text.trim() === '') return undefined;
  const { symbol, quantity, factor, offset } = parsed.unit;
  // The engine speed channel counts in 1/min, the one unit that every source writes.
  const toChannel = quantity === 'rotational speed' ? factor * SECONDS_PER_MINUTE : factor;
  const { reference } = parsed;
  return { symbol, quantity, factor: toChannel, offset, ...(reference === undefined ? {} : { reference }) };
}
