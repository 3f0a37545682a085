import type { Span } from './read-report.ts';
import { quantile } from './value-range.ts';

export interface TimeQuality {
  readonly durationS: number;
  readonly samples: number;
  /** Median interval between samples, s, and its inverse; absent with fewer than 2 samples. */
  readonly medianIntervalS?: number;
  readonly rateHz?: number;
  /** Half the spread between the 16th and 84th percentile of the intervals, s: one sigma if they were normal. */
  readonly jitterS?: number;
  /** Samples that would fill the places where the interval is a whole multiple of the usual one. */
  readonly missingSamples: number;
  /** Intervals of more than `GAP_INTERVALS` medians. */
  readonly gaps: readonly Span[];
}

/** An interval this many medians long is a pause of the logger (judgement). */
const GAP_INTERVALS = 5;
const MOST_GAPS = 1000;

export function findTimeQuality(timeS: Float64Array): TimeQuality {
  const samples = timeS.length;
  const durationS = samples > 0 ? timeS[samples - 1]! - timeS[0]! : 0;
  if (samples < 2) return { durationS, samples, missingSamples: 0, gaps: [] };
  const stride = Math.max(1, Math.floor(samples / 20_000));
  const intervals = new Float64Array(Math.floor((samples - 2) / stride) + 1);
  for (let k = 0; k < intervals.length; k++) intervals[k] = timeS[k * stride + 1]! - timeS[k * stride]!;
  intervals.sort();
  const median = quantile(intervals, 0.5);
  const gaps: Span[] = [];
  let missingSamples = 0;
  for (let i = 1; i < samples; i++) {
    const interval = timeS[i]! - timeS[i - 1]!;
    if (interval < 1.5 * median) continue;
    missingSamples += Math.round(interval / median) - 1;
    if (interval > GAP_INTERVALS * median && gaps.length < MOST_GAPS)
      gaps.push({ fromS: timeS[i - 1]!, toS: timeS[i]! });
  }
  return {
    durationS,
    samples,
    medianIntervalS: median,
    rateHz: 1 / median,
    jitterS: (quantile(intervals, 0.84) - quantile(intervals, 0.16)) / 2,
    missingSamples,
    gaps,
  };
}
