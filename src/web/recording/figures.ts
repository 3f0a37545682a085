/** A chart in figures: the least and most of every channel in every phase. */
import { firstAtOrAfter } from './chart/nearest.ts';
import { BASE } from './chart/pyramid.ts';
import type { Column, Source } from './chart/source.ts';
import type { View } from './chart/view.ts';

export type Range = readonly [low: number, high: number];

/** Exact extremes of samples [from, to): whole bins of the pyramid, single samples at both ends. */
export function rangeOfSamples({ values, pyramid }: Column, from: number, to: number): Range | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const take = (least: number, most: number): void => {
    if (least < low) low = least;
    if (most > high) high = most;
  };
  const firstBin = Math.ceil(from / BASE);
  const lastBin = Math.floor(to / BASE);
  const base = pyramid.levels[0]!;
  const inner = firstBin < lastBin;
  for (let i = from; i < (inner ? firstBin * BASE : to); i++) take(values[i]!, values[i]!);
  for (let k = firstBin; k < lastBin; k++) take(base.min[k]!, base.max[k]!);
  if (inner) for (let i = lastBin * BASE; i < to; i++) take(values[i]!, values[i]!);
  return low > high ? null : [low, high];
}

export function rangeWithin({ timeS }: Source, column: Column, { fromS, toS }: View): Range | null {
  return rangeOfSamples(column, firstAtOrAfter(timeS, fromS), firstAtOrAfter(timeS, toS + 1e-9));
}
