/**
 * Wall-clock times of a place: what people type. Moments are milliseconds since 1970; the caller says what time it is now.
 * Intl is part of the language and knows the summer times of all zones.
 */
export interface WallTime {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
}

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

const formats = new Map<string, Intl.DateTimeFormat>();
function formatOf(zone: string): Intl.DateTimeFormat {
  let format = formats.get(zone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat('en-US', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
    });
    formats.set(zone, format);
  }
  return format;
}

/** Wall-clock time of a moment in a zone (IANA name, as Europe/Berlin). */
export function wallTime(momentMs: number, zone: string): WallTime {
  const parts = new Map(
    formatOf(zone)
      .formatToParts(momentMs)
      .map(({ type, value }) => [type, Number(value)]),
  );
  const part = (name: Intl.DateTimeFormatPartTypes): number => parts.get(name) ?? 0;
  return { year: part('year'), month: part('month'), day: part('day'), hour: part('hour'), minute: part('minute') };
}

const asUtcMs = ({ year, month, day, hour, minute }: WallTime): number => Date.UTC(year, month - 1, day, hour, minute);

/**
 * Moments that a wall clock shows as this: two in the hour that comes twice when summer time ends, none in the hour that is
 * left out when it begins.
 */
export function momentsOf(wall: WallTime, zone: string): number[] {
  const naive = asUtcMs(wall);
  const found = new Set<number>();
  // The offset at this moment is one of those a day before and after.
  for (const near of [naive - DAY_MS, naive + DAY_MS]) {
    const offset = asUtcMs(wallTime(near, zone)) - Math.floor(near / MINUTE_MS) * MINUTE_MS;
    const moment = naive - offset;
    if (asUtcMs(wallTime(moment, zone)) === naive) found.add(moment);
  }
  return [...found].sort((a, b) => a - b);
}

/** One moment for a wall time: the first of two; in a gap, as far behind its beginning as was typed. */
export function momentOf(wall: WallTime, zone: string): number {
  const [first] = momentsOf(wall, zone);
  if (first !== undefined) return first;
  const naive = asUtcMs(wall);
  const before = naive - DAY_MS;
  return naive - (asUtcMs(wallTime(before, zone)) - Math.floor(before / MINUTE_MS) * MINUTE_MS);
}

/** The calendar day after. */
export function nextDay({ year, month, day }: WallTime, days = 1): Pick<WallTime, 'year' | 'month' | 'day'> {
  const date = new Date(Date.UTC(year, month - 1, day + days));
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/** 0 = Sunday. */
export const weekday = ({ year, month, day }: WallTime): number => new Date(Date.UTC(year, month - 1, day)).getUTCDay();

const two = (value: number): string => String(value).padStart(2, '0');
export const clockInWords = ({ hour, minute }: WallTime): string => `${two(hour)}:${two(minute)}`;
export const dateInWords = ({ year, month, day }: WallTime): string => `${year}-${two(month)}-${two(day)}`;
