import type { TimeMapping } from './mapping.ts';
import { type DecimalMark, parseDecimal } from './parse-number.ts';
import { parseClock, parseDateTime } from './parse-time.ts';

/** Reads the time of a row in seconds; NaN when it cannot be read. `first` and `second` are its cells. */
export type TimeOfRow = (first: string, second: string | undefined) => number;

export function timeReader(time: TimeMapping, decimal: DecimalMark): TimeOfRow {
  const dateOrder = time.dateOrder ?? 'year-first';
  switch (time.format) {
    case 'seconds':
      return (cell) => parseDecimal(cell, decimal);
    case 'milliseconds':
      return (cell) => parseDecimal(cell, decimal) / 1000;
    case 'minutes':
      return (cell) => parseDecimal(cell, decimal) * 60;
    case 'hours':
      return (cell) => parseDecimal(cell, decimal) * 3600;
    case 'clock':
      return (cell) => parseClock(cell);
    case 'date-time':
      return (cell, second) => parseDateTime(second === undefined ? cell : `${cell} ${second}`, dateOrder);
  }
}
