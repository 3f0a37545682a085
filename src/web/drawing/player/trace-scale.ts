import type { Phase } from '../../../recording/recording.ts';
import { textWidth } from '../placement/text-width.ts';

export interface Ticks {
  readonly low: number;
  readonly high: number;
  readonly at: readonly number[];
}

/** Round numbers over a range: 1, 2 or 5 times a power of ten apart. */
export function roundTicks(low: number, high: number, most: number): Ticks {
  const span = Math.max(high - low, 1e-9);
  // A trace's noise across zero is no reason for another step.
  if (high > 0 && high < 0.04 * span) return roundTicks(low, 0, most);
  if (low < 0 && -low < 0.04 * span) return roundTicks(0, high, most);
  const rough = span / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((k) => k * power).find((s) => s >= rough) ?? 10 * power;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.ceil(high / step - 1e-9);
  return {
    low: first * step,
    high: last * step,
    at: Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step),
  };
}

export interface PhaseName {
  readonly text: string;
  readonly x: number;
  /** Row above the plot, 0 next to it; absent where no row has room. */
  readonly row?: number;
  readonly tickX: number;
}

const GAP = 10;
const ROWS = 2;

/** Names of phases in rows above the plot, so that none crosses a line or another name. */
export function placePhaseNames(
  phases: readonly Phase[],
  name: (kind: Phase['kind']) => string,
  xAt: (timeS: number) => number,
  right: number,
  size: number,
): readonly PhaseName[] {
  const ends = new Array<number>(ROWS).fill(Number.NEGATIVE_INFINITY);
  return phases.map((phase) => {
    const text = name(phase.kind);
    const tickX = xAt(phase.fromS);
    const w = textWidth(text, size);
    const x = Math.min(tickX + 3, right - w);
    const fits = x >= tickX && x + w <= xAt(phase.toS) + 1;
    const row = ends.findIndex((end, i) => x > end + GAP && (i > 0 || fits));
    if (row < 0) return { text, x, tickX };
    ends[row] = x + w;
    return { text, x, row, tickX };
  });
}

/** Samples of a line thinned to about one pair of extremes a pixel, so that a long run stays one short path. */
export function linePath(
  timeS: Float32Array,
  values: Float32Array,
  xAt: (timeS: number) => number,
  yAt: (value: number) => number,
  pixels: number,
): string {
  const n = Math.min(timeS.length, values.length);
  const stride = Math.max(1, Math.floor(n / Math.max(1, pixels)));
  let d = '';
  for (let i = 0; i < n; i += stride) {
    const end = Math.min(n, i + stride);
    let lowest = i;
    let highest = i;
    for (let k = i + 1; k < end; k++) {
      if (values[k]! < values[lowest]!) lowest = k;
      if (values[k]! > values[highest]!) highest = k;
    }
    for (const k of lowest === highest ? [i] : [Math.min(lowest, highest), Math.max(lowest, highest)]) {
      d += `${d === '' ? 'M' : 'L'}${xAt(timeS[k]!).toFixed(1)} ${yAt(values[k]!).toFixed(1)}`;
    }
  }
  return d;
}
