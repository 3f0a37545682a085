import { type Point, pt } from '../placement/geometry.ts';
import type { CellBox } from '../placement/scheme.ts';

const PITCH = 9.5;
const INSET = 7;
const LANE = 8;

/** Grains of a cell of the bed, in the order in which they are shown as loaded: spread out, the same each time. */
export function grainsOf(cell: CellBox): readonly Point[] {
  const columns = Math.max(1, Math.floor((cell.w - 2 * INSET) / PITCH) + 1);
  const rows = Math.max(1, Math.floor((cell.h - 2 * INSET) / PITCH) + 1);
  const dx = (cell.w - 2 * INSET) / Math.max(1, columns - 1);
  const dy = (cell.h - 2 * INSET) / Math.max(1, rows - 1);
  const grains: { readonly at: Point; readonly rank: number }[] = [];
  const middle = cell.y + cell.h / 2;
  for (let i = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++) {
      // A lane is left free for the marks of the flow.
      if (Math.abs(cell.y + INSET + j * dy - middle) < LANE) continue;
      const rank = scatter(i, j);
      grains.push({ at: pt(cell.x + INSET + i * dx, cell.y + INSET + j * dy), rank });
    }
  }
  return grains.sort((a, b) => a.rank - b.rank).map((g) => g.at);
}

/** A number that looks random and is the same each time, from two small ones. */
function scatter(i: number, j: number): number {
  let h = Math.imul(i + 1, 0x9e3779b1) ^ Math.imul(j + 1, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return ((h ^ (h >>> 15)) >>> 0) / 2 ** 32;
}

/** Grains as dots of zero length: one path however many there are. */
export const dotsPath = (grains: readonly Point[]): string =>
  grains.map(({ x, y }) => `M${x.toFixed(1)} ${y.toFixed(1)}h0`).join('');
