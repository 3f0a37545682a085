import { clockInWords, dateInWords, momentOf, momentsOf, nextDay, type WallTime, wallTime } from './local-time.ts';

export interface ForecastHour {
  readonly momentMs: number;
  readonly temperatureK: number;
}

export type ForecastWanted =
  | { readonly kind: 'hour-and-temperature' | 'hour-of-day' | 'outside-air' }
  | { readonly kind: 'later-hour'; readonly after: string };

export interface ForecastProblem {
  /** Counted from 1. */
  readonly line: number;
  readonly found: string;
  readonly wanted: ForecastWanted;
}

export interface Forecast {
  readonly hours: readonly ForecastHour[];
  readonly problems: readonly ForecastProblem[];
}

const LINE =
  /^(?:(\d{4})-(\d{1,2})-(\d{1,2})[ T,;]+)?(\d{1,2})(?::(\d{2})(?::\d{2})?)?\s*([ap]m?\b|h\b|Uhr\b)?\s*[\s,;:=|]\s*([-+−]?\d+(?:[.,]\d+)?)\s*(?:°|deg)?\s*([CFK])?\s*$/i;
const COLDEST_K = 183;
const WARMEST_K = 333;

function kelvin(value: number, unit: string): number {
  if (unit === 'F') return (value + 459.67) / 1.8;
  return unit === 'K' ? value : value + 273.15;
}

/**
 * Reads an hourly forecast as people type or paste it: `06:00 4.5`, `6 am, 40 F`, `2026-03-29 01:00;3,5 C`, one hour a line.
 * Without dates the first hour is the next one after `nowMs`, and each that is not later than the one before is on the next
 * day; the hour that comes twice when summer time ends may stand twice. `unit` is for numbers without one.
 */
export function parseForecast(text: string, nowMs: number, zone: string, unit: 'C' | 'F' = 'C'): Forecast {
  const hours: ForecastHour[] = [];
  const problems: ForecastProblem[] = [];
  let day: Pick<WallTime, 'year' | 'month' | 'day'> | undefined;
  let lastMs = Number.NEGATIVE_INFINITY;
  text.split(/\r?\n/).forEach((raw, index) => {
    const line = raw.trim();
    if (line === '' || line.startsWith('#')) return;
    const match = LINE.exec(line);
    const fail = (wanted: ForecastWanted): void => {
      problems.push({ line: index + 1, found: line, wanted });
    };
    if (match === null) {
      // A heading is no mistake.
      if (hours.length > 0 || /\d/.test(line)) fail({ kind: 'hour-and-temperature' });
      return;
    }
    let hour = Number(match[4]);
    const minute = Number(match[5] ?? 0);
    const half = match[6]?.toLowerCase() ?? '';
    if (half.startsWith('p') && hour < 12) hour += 12;
    if (half.startsWith('a') && hour === 12) hour = 0;
    const temperatureK = kelvin(
      Number(match[7]!.replace(',', '.').replace('−', '-')),
      (match[8] ?? unit).toUpperCase(),
    );
    if (hour > 24 || minute > 59) {
      fail({ kind: 'hour-of-day' });
      return;
    }
    if (temperatureK < COLDEST_K || temperatureK > WARMEST_K) {
      fail({ kind: 'outside-air' });
      return;
    }
    if (match[1] !== undefined) day = { year: Number(match[1]), month: Number(match[2]), day: Number(match[3]) };
    else if (day === undefined) {
      const now = wallTime(nowMs, zone);
      day = now;
      if (momentOf({ ...now, hour, minute }, zone) < nowMs - 3_600_000) day = nextDay(now);
    }
    const at = (): WallTime => ({ ...day!, hour: hour % 24, minute });
    let found = momentsOf(at(), zone).find((moment) => moment > lastMs);
    if (found === undefined && match[1] === undefined && lastMs > Number.NEGATIVE_INFINITY) {
      if (momentOf(at(), zone) <= lastMs) day = nextDay(at());
      found = momentOf(at(), zone);
    }
    found ??= momentOf(hour === 24 ? { ...nextDay(at()), hour: 0, minute } : at(), zone);
    if (found <= lastMs) {
      const before = wallTime(lastMs, zone);
      fail({ kind: 'later-hour', after: `${dateInWords(before)} ${clockInWords(before)}` });
      return;
    }
    hours.push({ momentMs: found, temperatureK });
    lastMs = found;
  });
  return { hours, problems };
}

/** Farther than this from any hour of the forecast nothing is said. */
const REACH_MS = 3 * 3_600_000;

/** Temperature at a moment by straight lines; absent where the forecast does not reach. */
export function temperatureAt(hours: readonly ForecastHour[], momentMs: number): number | undefined {
  const after = hours.findIndex((each) => each.momentMs >= momentMs);
  if (after < 0) {
    const last = hours.at(-1);
    return last !== undefined && momentMs - last.momentMs <= 3_600_000 ? last.temperatureK : undefined;
  }
  const next = hours[after]!;
  const before = hours[after - 1];
  if (before === undefined) return next.momentMs - momentMs <= 3_600_000 ? next.temperatureK : undefined;
  if (next.momentMs - before.momentMs > 2 * REACH_MS) return undefined;
  const share = (momentMs - before.momentMs) / (next.momentMs - before.momentMs);
  return before.temperatureK + share * (next.temperatureK - before.temperatureK);
}
