import type { SkipReason } from './read-report.ts';

const SECONDS_PER_DAY = 86400;
/** Lines looked ahead to tell one wrong time from a clock that went back. */
const LOOK_AHEAD = 3;
/** So many lines in a row behind the latest time are a second recording, not a hiccup of the logger. */
export const RESTART_LINES = 20;

export interface OrderedTimes {
  /** 1 for the samples that stay; absent when all do. */
  readonly keep?: Uint8Array;
  readonly dropped: readonly { readonly index: number; readonly reason: SkipReason }[];
  /** Samples before which the clock passed midnight. */
  readonly midnights: readonly number[];
  /** First sample of a second recording in the same file. */
  readonly restartAt?: number;
}

function isIncreasing(timeS: Float64Array): boolean {
  for (let i = 1; i < timeS.length; i++) if (!(timeS[i]! > timeS[i - 1]!)) return false;
  return true;
}

/** Adds a day behind each midnight of a clock without date. Changes `timeS`. */
function passMidnights(timeS: Float64Array): number[] {
  const midnights: number[] = [];
  let added = 0;
  let before = timeS[0] ?? 0;
  for (let i = 1; i < timeS.length; i++) {
    const raw = timeS[i]!;
    const next = timeS[i + 1];
    // A single wrong cell is no midnight: the line after it must agree.
    if (raw < before - SECONDS_PER_DAY / 2 && (next === undefined || next < before - SECONDS_PER_DAY / 2)) {
      added += SECONDS_PER_DAY;
      midnights.push(i);
    }
    before = raw;
    timeS[i] = raw + added;
  }
  return midnights;
}

/**
 * Makes time strictly increasing by leaving samples out, under one rule: a time that equals the latest is
 * left out; a single time that runs ahead of all the next lines is left out; any other time behind the
 * latest is left out until time has passed the latest again.
 */
export function orderTimes(timeS: Float64Array, clockWithoutDate: boolean): OrderedTimes {
  if (isIncreasing(timeS)) return { dropped: [], midnights: [] };
  const midnights = clockWithoutDate ? passMidnights(timeS) : [];
  const n = timeS.length;
  const keep = new Uint8Array(n).fill(1);
  const dropped: { index: number; reason: SkipReason }[] = [];
  const drop = (index: number, reason: SkipReason): void => {
    keep[index] = 0;
    dropped.push({ index, reason });
  };
  let last = 0;
  let beforeLast = -1;
  let behind = 0;
  for (let i = 1; i < n; i++) {
    const t = timeS[i]!;
    if (t > timeS[last]!) {
      beforeLast = last;
      last = i;
      behind = 0;
      continue;
    }
    if (t === timeS[last]!) {
      drop(i, 'duplicated-time');
      continue;
    }
    let ahead = i + 1 < n && last === i - 1 && (beforeLast < 0 || t > timeS[beforeLast]!);
    for (let j = i + 1; j < Math.min(n, i + 1 + LOOK_AHEAD) && ahead; j++) ahead = timeS[j]! < timeS[last]!;
    if (ahead && timeS[i + 1]! > t) {
      drop(last, 'time-ahead');
      last = i;
      continue;
    }
    drop(i, 'backward-time');
    behind++;
    if (behind >= RESTART_LINES) return { keep, dropped, midnights, restartAt: i - behind + 1 };
  }
  return { keep, dropped, midnights };
}
