/** Lanes of a chart: one above the other, sharing the time axis. Plain data. */
import { decimalsOf, roundTicks } from './ticks.ts';

export type Pen = 'recorded' | 'model' | 'rival' | 'command';

/** What is drawn in a lane, in this order. A number names a column of the source. */
export type Layer =
  | { readonly kind: 'line'; readonly column: number; readonly pen: Pen }
  | { readonly kind: 'steps'; readonly column: number; readonly pen: Pen }
  | { readonly kind: 'dots'; readonly column: number; readonly pen: Pen }
  | { readonly kind: 'band'; readonly low: number; readonly high: number; readonly pen: 'model' | 'rival' }
  /** Shades the times at which a column is 1, over the whole height of the lane. */
  | { readonly kind: 'marked'; readonly column: number };

/** From SI to the unit that is shown: shown = (si - offset) / factor. */
export interface Shown {
  readonly unit: string;
  readonly factor: number;
  readonly offset: number;
  readonly decimals: number;
}

export interface Lane {
  readonly id: string;
  readonly title: string;
  readonly shown: Shown;
  /** What the ends of the lane are, SI. */
  readonly range: readonly [number, number];
  /** Words instead of numbers at 0 and 1, for commands. */
  readonly states?: readonly [off: string, on: string];
  readonly layers: readonly Layer[];
  readonly size: 'tall' | 'low' | 'switch';
}

export interface PlacedLane {
  readonly lane: Lane;
  /** Of the drawing part, CSS pixels from the top of the plot. */
  readonly top: number;
  readonly height: number;
  /** Baseline of the title when it stands above the lane. */
  readonly titleY: number | null;
}

export interface Placing {
  readonly lanes: readonly PlacedLane[];
  readonly height: number;
  /** Left of the plot, CSS pixels. */
  readonly gutter: number;
}

const HEIGHTS = { tall: 176, low: 56, switch: 24 } as const;
const GAP = 16;
const TITLE_ROW = 22;
/** Narrower than this, titles stand above their lanes instead of left of them. */
const NARROW = 620;
const GUTTER = 168;
const NARROW_GUTTER = 56;

export function placeLanes(lanes: readonly Lane[], width: number): Placing {
  const isNarrow = width < NARROW;
  let y = 6;
  const placed = lanes.map((lane): PlacedLane => {
    const titleY = isNarrow ? y + 14 : null;
    if (isNarrow) y += TITLE_ROW;
    const height = HEIGHTS[lane.size];
    const place = { lane, top: y, height, titleY };
    y += height + GAP;
    return place;
  });
  return { lanes: placed, height: y - GAP + 6, gutter: isNarrow ? NARROW_GUTTER : GUTTER };
}

/** A little air above and below, and a height even for what never moves. */
export function airyRange(low: number, high: number, smallest: number): readonly [number, number] {
  const span = Math.max(high - low, smallest);
  const middle = (low + high) / 2;
  return [Math.min(low, middle - span / 2) - 0.06 * span, Math.max(high, middle + span / 2) + 0.06 * span];
}

export interface LaneTick {
  readonly si: number;
  readonly text: string;
}

export const toShown = (si: number, { factor, offset }: Shown): number => (si - offset) / factor;
export const toSi = (value: number, { factor, offset }: Shown): number => value * factor + offset;

/** A true minus sign, and no minus before zero. */
export function numberText(value: number, decimals: number, mark = '.'): string {
  const text = value.toFixed(decimals);
  const plain = Number(text) === 0 ? text.replace('-', '') : text.replace('-', '\u2212');
  return mark === '.' ? plain : plain.replace('.', mark);
}

/** Round numbers of the unit shown; two in a low lane, more in a tall one. */
export function laneTicks({ range, shown, size, states }: Lane, mark = '.'): readonly LaneTick[] {
  if (states !== undefined || size === 'switch') return [];
  const a = toShown(range[0], shown);
  const b = toShown(range[1], shown);
  const ticks = roundTicks(Math.min(a, b), Math.max(a, b), size === 'tall' ? 5 : 3);
  const decimals = ticks.length < 2 ? shown.decimals : decimalsOf(ticks);
  return ticks.map((tick) => ({ si: toSi(tick, shown), text: numberText(tick, decimals, mark) }));
}
