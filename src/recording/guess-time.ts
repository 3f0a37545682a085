import type { CsvFormat } from './csv-format.ts';
import { plainHeader } from './guess-columns.ts';
import type { DateOrder, TimeFormat, TimeMapping } from './mapping.ts';
import { isMissing, parseDecimal } from './parse-number.ts';
import { datePart, guessDateOrder, parseClock, parseDateTime, splitDate } from './parse-time.ts';

const TIME_WORD =
  /^(time|times|timestamp|time ?stamp|t|elapsed|clock|seconds|sec|date ?time|datum|zeit)\b|\b(time|timestamp|elapsed|clock)\b/;
const DATE_WORD = /\bdate\b/;

function unitFormat(text: string): TimeFormat | undefined {
  const unit = (
    /[[({]\s*([^\])}]+?)\s*[\])}]/.exec(text)?.[1] ??
    /(?:^|[_\s])([a-z]+)$/i.exec(text.trim())?.[1] ??
    ''
  ).toLowerCase();
  if (['s', 'sec', 'secs', 'second', 'seconds'].includes(unit)) return 'seconds';
  if (['ms', 'msec', 'millis', 'milliseconds'].includes(unit)) return 'milliseconds';
  if (['min', 'mins', 'minutes'].includes(unit)) return 'minutes';
  if (['h', 'hr', 'hours'].includes(unit)) return 'hours';
  return undefined;
}

const share = (cells: readonly string[], test: (cell: string) => boolean): number =>
  cells.length === 0 ? 0 : cells.filter(test).length / cells.length;

function guessNumberFormat(values: readonly number[]): { format: TimeFormat; confidence: number; reason: string } {
  const steps = values
    .slice(1)
    .map((t, k) => t - values[k]!)
    .filter((step) => step > 0)
    .sort((a, b) => a - b);
  const step = steps[Math.floor(steps.length / 2)] ?? 0;
  // Counts from 1970 have 10 digits in seconds and 13 in milliseconds.
  if (values[0]! > 1e11)
    return { format: 'milliseconds', confidence: 0.9, reason: 'a count of milliseconds from 1970' };
  if (values[0]! > 1e9) return { format: 'seconds', confidence: 0.9, reason: 'a count of seconds from 1970' };
  if (step >= 15 && values.every(Number.isInteger))
    return { format: 'milliseconds', confidence: 0.7, reason: `no unit is given; steps of ${step} fit milliseconds` };
  return { format: 'seconds', confidence: 0.8, reason: 'no unit is given; steps fit seconds' };
}

function guessOne(format: CsvFormat, k: number): TimeMapping | undefined {
  const column = format.header[k]!;
  const cells = format.sample.map((row) => row[k] ?? '').filter((cell) => !isMissing(cell));
  if (cells.length === 0) return undefined;
  const plain = plainHeader(column);
  const named = TIME_WORD.test(plain);
  const dated = guessDateOrder(cells.map(datePart));
  if (dated && share(cells, (cell) => !Number.isNaN(parseDateTime(cell, dated.order))) > 0.8)
    return {
      columns: [column],
      format: 'date-time',
      dateOrder: dated.order,
      confidence: dated.ambiguous ? 0.7 : 0.95,
      reasons: ['cells are dates with clock times', dated.reason],
    };
  if (share(cells, (cell) => !Number.isNaN(parseClock(cell))) > 0.8)
    return { columns: [column], format: 'clock', confidence: named ? 0.95 : 0.8, reasons: ['cells are clock times'] };
  const values = cells.map((cell) => parseDecimal(cell, format.decimal)).filter((value) => !Number.isNaN(value));
  if (values.length < 0.8 * cells.length) return undefined;
  const rising = values.slice(1).filter((t, j) => t >= values[j]!).length >= 0.8 * (values.length - 1);
  const changes = values.length < 2 || values[values.length - 1] !== values[0];
  const unit = unitFormat(format.unitRow?.[k] ?? '') ?? unitFormat(column);
  if (!rising || !changes || !(named || (unit !== undefined && DATE_WORD.test(plain) === false && plain.length < 4)))
    return undefined;
  if (column.trim().toLowerCase() === 'time_s')
    return { columns: [column], format: 'seconds', confidence: 1, reasons: ['our own column name'] };
  if (unit) return { columns: [column], format: unit, confidence: 0.95, reasons: ['header names time and its unit'] };
  const guess = guessNumberFormat(values);
  return {
    columns: [column],
    format: guess.format,
    confidence: guess.confidence,
    reasons: ['header names time', guess.reason],
  };
}

/** A date column beside a clock column. */
function withDateColumn(format: CsvFormat, clock: TimeMapping): TimeMapping {
  const index = format.header.findIndex((_, k) => {
    const cells = format.sample.map((row) => row[k] ?? '').filter((cell) => !isMissing(cell));
    return cells.length > 0 && share(cells, (cell) => splitDate(cell) !== undefined) > 0.8;
  });
  if (index < 0) return clock;
  const order = guessDateOrder(format.sample.map((row) => row[index] ?? ''));
  const dateOrder: DateOrder = order?.order ?? 'day-first';
  return {
    columns: [format.header[index]!, clock.columns[0]!],
    format: 'date-time',
    dateOrder,
    confidence: order?.ambiguous ? 0.7 : 0.9,
    reasons: ['a date column beside a clock column', order?.reason ?? ''],
  };
}

/** Finds the time column and its format; undefined when there is none. */
export function guessTime(format: CsvFormat): TimeMapping | undefined {
  const guesses = format.header.map((_, k) => guessOne(format, k)).filter((guess) => guess !== undefined);
  if (guesses.length === 0) return undefined;
  const best = guesses.reduce((a, b) => ((b.confidence ?? 0) > (a.confidence ?? 0) ? b : a));
  return best.format === 'clock' ? withDateColumn(format, best) : best;
}
