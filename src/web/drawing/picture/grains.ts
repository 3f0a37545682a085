import { type Point, pt } from '../placement/geometry.ts';
import type { CellBox } from '../placement/scheme.ts';

const PITCH = 9.5;
const INSET = 7;

/** Grains of a cell of the bed, in the order in which they are shown as loaded: spread out, the same each time. */
export function grainsOf(cell: CellBox): readonly Point[] {
  const columns = Math.max(1, Math.floor((cell.w - 2 * INSET) / PITCH) + 1);
  const rows = Math.max(1, Math.floor((cell.h - 2 * INSET) / PITCH) + 1);
  const dx = (cell.w - 2 * INSET) / Math.max(1, columns - 1);
  const dy = (cell.h - 2 * INSET) / Math.max(1, rows - 1);
  const grains: { readonly at: Point; readonly rank: number }[] = [];
  for (let i = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++) {
      // The fraction of a multiple of the golden ratio spreads evenly (Weyl's sequence).
      const rank = ((i * rows + j) * 0.618_033_988_75) % 1;
      grains.push({ at: pt(cell.x + INSET + i * dx, cell.y + INSET + j * dy), rank });
    }
  }
  return grains.sort((a, b) => a.rank - b.rank).map((g) => g.at);
}

/** Grains as dots of zero length: one path however many there are. */
export const dotsPath = (grains: readonly Point[]): string =>
  grains.map(({ x, y }) => `M${x.toFixed(1)} ${y.toFixed(1)}h0`).join('');
