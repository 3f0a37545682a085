import type { ValueRange } from './guess-unit.ts';

/** Values looked at for medians and quantiles; more would not change them and cost time. */
const SAMPLE = 20_000;

/** The numbers of a column, sorted and without gaps; of a long column an even selection. */
export function sortedSample(values: Float64Array): Float64Array {
  const stride = Math.max(1, Math.floor(values.length / SAMPLE));
  const sample = new Float64Array(Math.ceil(values.length / stride));
  let n = 0;
  for (let i = 0; i < values.length; i += stride) {
    const value = values[i]!;
    if (!Number.isNaN(value)) sample[n++] = value;
  }
  return sample.subarray(0, n).sort();
}

/** Largest number of all. */
export function largestOf(values: Float64Array): number {
  let largest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) if (values[i]! > largest) largest = values[i]!;
  return largest;
}

export function quantile(sorted: Float64Array, q: number): number {
  if (sorted.length === 0) return Number.NaN;
  const at = q * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(sorted.length - 1, low + 1);
  return sorted[low]! + (at - low) * (sorted[high]! - sorted[low]!);
}

/** Range of a column, not moved by a few wrong cells: the outer 1 % count as wrong in long columns. */
export function rangeOf(values: Float64Array): ValueRange | undefined {
  const sorted = sortedSample(values);
  if (sorted.length === 0) return undefined;
  const tail = sorted.length >= 100 ? 0.01 : 0;
  return { min: quantile(sorted, tail), max: quantile(sorted, 1 - tail), median: quantile(sorted, 0.5) };
}
