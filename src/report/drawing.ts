/**
 * A figure as plain data: marks in named styles on a sheet of a given size. The same marks become SVG on a
 * page and vector strokes in a PDF, so the two cannot disagree.
 */

/** What a line or area means; colours belong to the medium. */
export type Pen =
  | 'axis'
  | 'grid'
  | 'shade'
  | 'model'
  | 'band'
  | 'rival'
  | 'rival-band'
  | 'recorded'
  | 'limit'
  | 'command'
  | 'interval'
  | 'median'
  | 'zero';

/** How a label is set. */
export type Lettering = 'label' | 'strong' | 'quiet' | 'limit';

export type Mark =
  | { readonly kind: 'line'; readonly pen: Pen; readonly points: readonly Point[] }
  | { readonly kind: 'area'; readonly pen: Pen; readonly points: readonly Point[] }
  | { readonly kind: 'dots'; readonly pen: Pen; readonly radius: number; readonly points: readonly Point[] }
  | {
      readonly kind: 'text';
      readonly lettering: Lettering;
      readonly at: Point;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly text: string;
    };

export type Point = readonly [x: number, y: number];

export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  /** What the figure shows, in words, for those who do not see it. */
  readonly description: string;
  readonly marks: readonly Mark[];
}

export const rectangle = (x: number, y: number, width: number, height: number): readonly Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** Height of the letters in a figure, in figure units; one size, so that nothing is smaller than the rest. */
export const LETTER_SIZE = 12;

/** Advance of an average character relative to the letter size: enough to keep labels apart. */
const MEAN_ADVANCE = 0.52;
export const textWidth = (text: string): number => text.length * MEAN_ADVANCE * LETTER_SIZE;
