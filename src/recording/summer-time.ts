/**
 * A clock without its offset from UTC that is set by an hour while recording, as at the begin and end of summer time. Taken as it
 * stands that would be an hour's pause, or a recording that starts over.
 */
const HOUR_S = 3600;
/** Places change their clocks between midnight and four o'clock, by their own clock. */
const LATEST_HOUR = 4;
/** Samples farther apart than this cannot tell it from a pause, s. */
const LONGEST_INTERVAL_S = 300;
/** The change is at a full hour, give or take so many intervals. */
const INTERVALS = 2;

export interface ClockChange {
  /** First sample after it. */
  readonly index: number;
  readonly direction: 'forward' | 'back';
}

function medianInterval(timeS: Float64Array): number {
  const steps = timeS.slice(1).map((t, i) => t - timeS[i]!);
  return steps.filter((step) => step > 0).sort()[steps.length >> 1] ?? Number.NaN;
}

/** Takes the first such change out of the times; changes `timeS`. */
export function undoSummerTime(timeS: Float64Array): ClockChange | undefined {
  const usual = medianInterval(timeS);
  if (!(usual <= LONGEST_INTERVAL_S)) return undefined;
  const tolerance = INTERVALS * usual;
  const fromHour = (t: number): number => Math.abs(t - HOUR_S * Math.round(t / HOUR_S));
  for (let i = 1; i < timeS.length; i++) {
    const before = timeS[i - 1]!;
    const after = timeS[i]!;
    const step = after - before;
    const isHour = Math.abs(Math.abs(step) - HOUR_S) <= tolerance;
    if (!isHour || fromHour(before) > tolerance || fromHour(after) > tolerance) continue;
    if ((after / HOUR_S) % 24 >= LATEST_HOUR + tolerance / HOUR_S) continue;
    const direction = step > 0 ? 'forward' : 'back';
    for (let k = i; k < timeS.length; k++) timeS[k] = timeS[k]! - Math.sign(step) * HOUR_S;
    return { index: i, direction };
  }
  return undefined;
}
