import type { ChannelName } from '../recording.ts';
import type { Series } from './pick-pressure.ts';

export interface MergedSeries {
  readonly timeS: Float64Array;
  readonly channels: Partial<Record<ChannelName, Float64Array>>;
  /** Largest distance by which a sample was moved to stand in the row of another, s. */
  readonly largestShiftS: number;
  /** Samples for which the row had one of their channel already; the nearer one stands. */
  readonly merged: number;
}

/** A sample so many usual intervals and so long away from any row gets a row of its own (judgement). */
const REACH_INTERVALS = 1.5;
const REACH_S = 0.05;

/**
 * Puts channels that a car was asked for in turn on one time axis. The rows are the samples of the leading channel;
 * each other sample goes to the row nearest in time, and where the leading channel pauses, to a row of its own. Nothing
 * is filled in: a row without a sample of a channel has NaN there.
 */
export function mergeSeries(series: ReadonlyMap<ChannelName, Series>, leading: ChannelName): MergedSeries {
  const lead = series.get(leading)!.timeS;
  const reachS = Math.max(REACH_S, REACH_INTERVALS * medianInterval(lead));
  const extra = new Set<number>();
  for (const [name, { timeS }] of series)
    if (name !== leading) for (const t of timeS) if (Math.abs(lead[nearest(lead, t)]! - t) > reachS) extra.add(t);
  const rows = Float64Array.from([...lead, ...extra]).sort();
  const channels: Partial<Record<ChannelName, Float64Array>> = {};
  let largestShiftS = 0;
  let merged = 0;
  for (const [name, { timeS, values }] of series) {
    const row = new Float64Array(rows.length).fill(Number.NaN);
    const shift = new Float64Array(rows.length).fill(Number.POSITIVE_INFINITY);
    for (let i = 0; i < timeS.length; i++) {
      const k = nearest(rows, timeS[i]!);
      const distance = Math.abs(rows[k]! - timeS[i]!);
      if (shift[k]! < Number.POSITIVE_INFINITY) merged++;
      if (distance >= shift[k]!) continue;
      shift[k] = distance;
      row[k] = values[i]!;
    }
    for (const distance of shift)
      if (distance < Number.POSITIVE_INFINITY && distance > largestShiftS) largestShiftS = distance;
    channels[name] = row;
  }
  return { timeS: rows, channels, largestShiftS, merged };
}

function medianInterval(timeS: Float64Array): number {
  if (timeS.length < 2) return 0;
  const steps = new Float64Array(timeS.length - 1);
  for (let i = 0; i < steps.length; i++) steps[i] = timeS[i + 1]! - timeS[i]!;
  return steps.sort()[steps.length >> 1]!;
}

/** Index of the entry of a rising row that is nearest to a value. */
function nearest(rows: Float64Array, value: number): number {
  let low = 0;
  let high = rows.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rows[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low > 0 && value - rows[low - 1]! <= rows[low]! - value ? low - 1 : low;
}
