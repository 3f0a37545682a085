/** A stretch of samples of which only the sums are kept. */
import { CHANNELS, type ChannelName, type PhaseKind } from '../../recording/recording.ts';

export const CHANNEL_NAMES = Object.keys(CHANNELS) as ChannelName[];
/** The channels that a model is held against, by their place in `Bin.pressures`. */
export const PRESSURES = ['tankPressureGaugePa', 'canisterPressureGaugePa', 'pumpPressureGaugePa'] as const;
export type PressureName = (typeof PRESSURES)[number];

/** Readings of one pressure, spikes left out: their number, and the sums of their times and values. */
export interface Readings {
  count: number;
  sumTimeS: number;
  sumGaugePa: number;
}

export interface Bin {
  /** Times of the first and the last sample [s]. */
  readonly fromS: number;
  toS: number;
  samples: number;
  sumTimeS: number;
  /** In the order of `PRESSURES`. */
  readonly pressures: readonly Readings[];
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
    pressures: PRESSURES.map(() => ({ count: 0, sumTimeS: 0, sumGaugePa: 0 })),
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
  a.pressures.forEach((into, i) => {
    const from = b.pressures[i]!;
    into.count += from.count;
    into.sumTimeS += from.sumTimeS;
    into.sumGaugePa += from.sumGaugePa;
  });
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

/**
 * Joins fine bins to what one of a coarser grid would have taken, as if they had been filled by it. Bins of two phases and
 * bins on both sides of a change stay apart.
 *
 * @param widthS longest bin by the time since the last change [s]
 */
export function regrouped(
  bins: readonly Bin[],
  changesS: readonly number[],
  widthS: (sinceS: number) => number,
): Bin[] {
  const joined: Bin[] = [];
  let change = 0;
  let since = Number.NEGATIVE_INFINITY;
  let stopS = Number.NEGATIVE_INFINITY;
  for (const bin of bins) {
    const open = joined[joined.length - 1];
    let changed = false;
    while (change < changesS.length && changesS[change]! <= bin.fromS) {
      since = changesS[change++]!;
      changed = true;
    }
    if (open && !changed && bin.fromS < stopS && bin.phase === open.phase) mergeInto(open, bin);
    else {
      joined.push(copyOf(bin));
      stopS = bin.fromS + widthS(bin.fromS - since);
    }
  }
  return joined;
}

function copyOf(bin: Bin): Bin {
  return {
    ...bin,
    pressures: bin.pressures.map((r) => ({ ...r })),
    sums: Float64Array.from(bin.sums),
    counts: Float64Array.from(bin.counts),
  };
}

/** Bins at the end that are still being filled or checked for spikes. */
const NEWEST = 6;
/** Time after a change [s] within which bins are merged by their length alone, judgement. */
const FINE_S = 8;
