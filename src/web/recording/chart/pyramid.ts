/**
 * A pyramid of smallest and largest values, so that a picture of a million samples reads a few thousand numbers.
 *
 * Level 0 has one bin for `BASE` samples; each further level joins two bins of the one below.
 */
export type Samples = Float32Array | Float64Array;

export interface PyramidLevel {
  readonly min: Float32Array;
  readonly max: Float32Array;
}

export interface Pyramid {
  readonly levels: readonly PyramidLevel[];
}

export const BASE = 16;
/** A level with fewer bins than this is never asked for: no picture is that narrow. */
const FEWEST_BINS = 64;

/** Smallest and largest of samples [from, to) into `min[at]`, `max[at]`; NaN where all are absent. */
function fold(values: Samples, from: number, to: number, min: Float32Array, max: Float32Array, at: number): void {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) {
    const value = values[i]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const isEmpty = low > high;
  min[at] = isEmpty ? Number.NaN : low;
  max[at] = isEmpty ? Number.NaN : high;
}

function joinPairs(below: PyramidLevel): PyramidLevel {
  const bins = Math.ceil(below.min.length / 2);
  const min = new Float32Array(bins);
  const max = new Float32Array(bins);
  for (let k = 0; k < bins; k++) {
    const a = 2 * k;
    const b = a + 1 < below.min.length ? a + 1 : a;
    // A comparison with NaN is false, so an absent half gives way to the other.
    min[k] = below.min[a]! <= below.min[b]! || Number.isNaN(below.min[b]!) ? below.min[a]! : below.min[b]!;
    max[k] = below.max[a]! >= below.max[b]! || Number.isNaN(below.max[b]!) ? below.max[a]! : below.max[b]!;
  }
  return { min, max };
}

export function buildPyramid(values: Samples): Pyramid {
  const bins = Math.ceil(values.length / BASE);
  const min = new Float32Array(bins);
  const max = new Float32Array(bins);
  for (let k = 0; k < bins; k++) fold(values, k * BASE, Math.min(values.length, (k + 1) * BASE), min, max, k);
  const levels: PyramidLevel[] = [{ min, max }];
  while (levels.at(-1)!.min.length > 2 * FEWEST_BINS) levels.push(joinPairs(levels.at(-1)!));
  return { levels };
}

/** Smallest and largest of all samples; null when every one is absent. */
export function extent({ levels }: Pyramid): readonly [number, number] | null {
  const top = levels.at(-1)!;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < top.min.length; k++) {
    if (top.min[k]! < low) low = top.min[k]!;
    if (top.max[k]! > high) high = top.max[k]!;
  }
  return low > high ? null : [low, high];
}

/** What a view shows: bins of `size` samples from bin `first` to before `end`; size 1 is the samples themselves. */
export interface Bins {
  readonly size: number;
  readonly first: number;
  readonly end: number;
}

/**
 * Bins for samples [from, to) with `least` to `2 * least` of them, or the samples where they are fewer. Bins lie on
 * whole multiples of their size, so that they do not flicker when the view moves.
 */
export function chooseBins(from: number, to: number, least: number): Bins {
  const perBin = (to - from) / Math.max(1, least);
  const size = perBin < 2 ? 1 : 2 ** Math.floor(Math.log2(perBin));
  return { size, first: Math.floor(from / size), end: Math.ceil(to / size) };
}

/** Writes smallest and largest of every bin; with size 1 both are the sample. */
export function readBins(
  values: Samples,
  pyramid: Pyramid,
  { size, first, end }: Bins,
  min: Float32Array,
  max: Float32Array,
): void {
  const level = pyramid.levels[Math.log2(size / BASE)];
  if (level !== undefined) {
    min.set(level.min.subarray(first, end));
    max.set(level.max.subarray(first, end));
    return;
  }
  if (size === 1) {
    const part = values.subarray(first, end);
    min.set(part);
    max.set(part);
    return;
  }
  for (let k = first; k < end; k++)
    fold(values, k * size, Math.min(values.length, (k + 1) * size), min, max, k - first);
}
