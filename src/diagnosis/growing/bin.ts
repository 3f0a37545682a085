/** A stretch of samples of which only the sums are kept. */
import { CHANNELS, type ChannelName, type PhaseKind } from '../../recording/recording.ts';

export const CHANNEL_NAMES = Object.keys(CHANNELS) as ChannelName[];

export interface Bin {
  /** Times of the first and the last sample [s]. */
  readonly fromS: number;
  toS: number;
  samples: number;
  sumTimeS: number;
  /** Readings of the tank pressure, spikes left out, and the sum of their times and values. */
  readings: number;
  sumReadingTimeS: number;
  sumGaugePa: number;
  /** By channel: sum and number of the values that exist. */
  readonly sums: Float64Array;
  readonly counts: Float64Array;
  phase: PhaseKind;
}

export function emptyBin(fromS: number): Bin {
  return {
    fromS,
    toS: fromS,
    samples: 0,
    sumTimeS: 0,
    readings: 0,
    sumReadingTimeS: 0,
    sumGaugePa: 0,
    sums: new Float64Array(CHANNEL_NAMES.length),
    counts: new Float64Array(CHANNEL_NAMES.length),
    phase: 'rest',
  };
}

export const binTimeS = (b: Bin): number => b.sumTimeS / b.samples;

/** Adds a later bin to an earlier one. */
export function mergeInto(a: Bin, b: Bin): void {
  a.toS = b.toS;
  a.samples += b.samples;
  a.sumTimeS += b.sumTimeS;
  a.readings += b.readings;
  a.sumReadingTimeS += b.sumReadingTimeS;
  a.sumGaugePa += b.sumGaugePa;
  for (let c = 0; c < a.sums.length; c++) {
    a.sums[c] = a.sums[c]! + b.sums[c]!;
    a.counts[c] = a.counts[c]! + b.counts[c]!;
  }
}

/**
 * Merges neighbours until no more than `most` are left: those first whose joint length is least against the time since
 * the last command change, for what happens after a change slows down as it goes. Bins of two phases and bins on both
 * sides of a change stay apart, and the newest few stay as they are.
 *
 * @param bins in order of time; changed in place
 * @param changesS times of the command changes [s], sorted
 */
export function coarsen(bins: Bin[], changesS: readonly number[], most: number): void {
  while (bins.length > most) {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    let change = 0;
    let since = bins[0]!.fromS;
    for (let i = 0; i + 1 < bins.length - NEWEST; i++) {
      const a = bins[i]!;
      const b = bins[i + 1]!;
      while (change < changesS.length && changesS[change]! <= a.fromS) since = changesS[change++]!;
      if (a.phase !== b.phase || (change < changesS.length && changesS[change]! <= b.fromS)) continue;
      const relative = (b.toS - a.fromS) / (a.fromS - since + FINE_S);
      if (relative < least) {
        least = relative;
        best = i;
      }
    }
    if (best < 0) return;
    mergeInto(bins[best]!, bins[best + 1]!);
    bins.splice(best + 1, 1);
  }
}

/** Bins at the end that are still being filled or checked for spikes. */
const NEWEST = 6;
/** Time after a change [s] within which bins are merged by their length alone, judgement. */
const FINE_S = 8;
