import type { DateOrder } from './mapping.ts';

const SECONDS_PER_DAY = 86400;

/** Days from 1970-01-01 in the proleptic Gregorian calendar; undefined for a day that does not exist. */
function daysFromCivil(year: number, month: number, day: number): number | undefined {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const lengths = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  if (month < 1 || month > 12 || day < 1 || day > lengths[month - 1]!) return undefined;
  const y = month > 2 ? year : year - 1;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

const CLOCK = /^(?:(\d{1,3}):)?(\d{1,2}):(\d{2}(?:[.,]\d+)?)\s*(am|pm)?$/i;

/** Seconds of a clock time `[H:]M:S[.fff] [am|pm]`; NaN when it is none. */
export function parseClock(text: string): number {
  const match = CLOCK.exec(text.trim());
  if (!match) return Number.NaN;
  const half = match[4]?.toLowerCase();
  let hours = match[1] === undefined ? 0 : Number(match[1]);
  const minutes = Number(match[2]);
  const seconds = Number(match[3]!.replace(',', '.'));
  if (minutes > 59 || seconds >= 61) return Number.NaN;
  if (half !== undefined) {
    if (match[1] === undefined || hours < 1 || hours > 12) return Number.NaN;
    hours = (hours % 12) + (half === 'pm' ? 12 : 0);
  }
  return hours * 3600 + minutes * 60 + seconds;
}

const DATE = /^(\d{1,4})[-/. ](\d{1,2})[-/. ](\d{1,4})$/;

/** The three numbers of a date in the order they are written. */
export function splitDate(text: string): readonly [number, number, number] | undefined {
  const match = DATE.exec(text.trim());
  return match ? [Number(match[1]), Number(match[2]), Number(match[3])] : undefined;
}

function parseDate(text: string, order: DateOrder): number {
  const parts = splitDate(text);
  if (!parts) return Number.NaN;
  const [a, b, c] = parts;
  const [year, month, day] = order === 'year-first' ? [a, b, c] : order === 'day-first' ? [c, b, a] : [c, a, b];
  const days = daysFromCivil(year < 100 ? year + 2000 : year, month, day);
  return days === undefined ? Number.NaN : days * SECONDS_PER_DAY;
}

const ZONE = /(?:z|[+-]\d{2}:?\d{2})$/i;

/** Seconds from 1970 of `date clock` or `dateTclock[zone]`; NaN when it is none. */
export function parseDateTime(text: string, order: DateOrder): number {
  const trimmed = text.trim();
  const cut = trimmed.search(/[T ,]+(?=\d{1,3}:)/);
  if (cut < 0) return Number.NaN;
  let clock = trimmed.slice(cut).replace(/^[T ,]+/, '');
  let zoneS = 0;
  const zone = ZONE.exec(clock);
  if (zone) {
    clock = clock.slice(0, zone.index);
    if (zone[0].length > 1) {
      const digits = zone[0].replace(':', '');
      zoneS = (Number(digits.slice(1, 3)) * 60 + Number(digits.slice(3, 5))) * 60 * (digits[0] === '-' ? -1 : 1);
    }
  }
  return parseDate(trimmed.slice(0, cut), order) + parseClock(clock) - zoneS;
}

export interface DateOrderGuess {
  readonly order: DateOrder;
  readonly ambiguous: boolean;
  readonly reason: string;
}

/** Tells day-first from month-first by numbers above 12; says so when none decides. */
export function guessDateOrder(dates: readonly string[]): DateOrderGuess | undefined {
  let first = 0;
  let second = 0;
  let read = 0;
  let dotted = false;
  for (const text of dates) {
    const parts = splitDate(text);
    if (!parts) continue;
    if (parts[0] > 31) return { order: 'year-first', ambiguous: false, reason: `"${text}" starts with the year` };
    read++;
    first = Math.max(first, parts[0]);
    second = Math.max(second, parts[1]);
    dotted ||= text.includes('.');
  }
  if (read === 0) return undefined;
  if (first > 12) return { order: 'day-first', ambiguous: false, reason: `a first number of ${first} is no month` };
  if (second > 12)
    return { order: 'month-first', ambiguous: false, reason: `a second number of ${second} is no month` };
  if (dotted) return { order: 'day-first', ambiguous: false, reason: 'dates with dots put the day first' };
  return { order: 'day-first', ambiguous: true, reason: 'no number above 12 tells day from month; day first assumed' };
}

/** The date part in front of a date-time. */
export function datePart(text: string): string {
  const cut = text.trim().search(/[T ,]+(?=\d{1,3}:)/);
  return cut < 0 ? text.trim() : text.trim().slice(0, cut);
}
