/** What a chart draws from: columns over one time axis, each with its pyramid. */
import { firstAtOrAfter } from './nearest.ts';
import { type Bins, buildPyramid, chooseBins, type Pyramid, readBins, type Samples } from './pyramid.ts';
import type { View } from './view.ts';

export interface Column {
  readonly values: Samples;
  readonly pyramid: Pyramid;
}

export interface Source {
  readonly timeS: Float64Array;
  readonly columns: readonly Column[];
  /** Where the logger paused: lines do not cross it. */
  readonly pauses: readonly View[];
}

export const column = (values: Samples): Column => ({ values, pyramid: buildPyramid(values) });

/** A page that does anything else meanwhile is told nothing of it: a pyramid of a million samples takes some 10 ms. */
const nextTask = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/** Builds the columns one by one, with room for the page between them. */
export async function buildColumns(all: readonly Samples[]): Promise<readonly Column[]> {
  const columns: Column[] = [];
  for (const values of all) {
    columns.push(column(values));
    if (values.length > 50_000) await nextTask();
  }
  return columns;
}

/** The part of a source that a view shows, reduced to what the eye can part. Buffers are used again and again. */
export class Reduced {
  bins: Bins = { size: 1, first: 0, end: 0 };
  count = 0;
  x = new Float64Array(0);
  private min: Float32Array[] = [];
  private max: Float32Array[] = [];

  /** `least`: bins wanted at least, about one for a pixel. */
  read(source: Source, view: View, least: number): void {
    const { timeS, columns } = source;
    const from = Math.max(0, firstAtOrAfter(timeS, view.fromS) - 1);
    const to = Math.min(timeS.length, firstAtOrAfter(timeS, view.toS) + 1);
    this.bins = chooseBins(from, to, least);
    const { size, first, end } = this.bins;
    this.count = end - first;
    if (this.x.length < this.count || this.min.length !== columns.length) this.grow(columns.length);
    const half = size >>> 1;
    for (let k = 0; k < this.count; k++) this.x[k] = timeS[Math.min(timeS.length - 1, (first + k) * size + half)]!;
    columns.forEach(({ values, pyramid }, c) => {
      readBins(values, pyramid, this.bins, this.min[c]!, this.max[c]!);
    });
  }

  low(column: number): Float32Array {
    return this.min[column]!;
  }

  high(column: number): Float32Array {
    return this.max[column]!;
  }

  private grow(columns: number): void {
    const capacity = Math.ceil(this.count * 1.5);
    this.x = new Float64Array(capacity);
    this.min = Array.from({ length: columns }, () => new Float32Array(capacity));
    this.max = Array.from({ length: columns }, () => new Float32Array(capacity));
  }
}
