/** Names of the phases in rows above a plot, so that no name crosses a grid line or another name. */
import type { Phase } from '../recording/recording.ts';
import { LETTER_SIZE, type Mark, textWidth } from './drawing.ts';
import { ENGLISH_FIGURES, type FigureWords } from './figure-words.ts';

export interface PhaseNames {
  readonly phases: readonly Phase[];
  readonly xAt: (timeS: number) => number;
  readonly right: number;
  readonly rowHeight: number;
  readonly rows: number;
  readonly words?: FigureWords;
}

const GAP = 8;

/**
 * A name that fits over its own phase stands in the row next to the plot; a longer one moves up, so that no tick
 * ever runs through a name.
 */
export function phaseNames(input: PhaseNames): readonly Mark[] {
  const { phases, xAt, right, rowHeight, rows, words = ENGLISH_FIGURES } = input;
  const rowEnds = new Array<number>(rows).fill(Number.NEGATIVE_INFINITY);
  const bottom = rowHeight * rows;
  const marks: Mark[] = [];
  for (const phase of phases) {
    const text = words.phase(phase.kind);
    const at = xAt(phase.fromS);
    // A name that would leave the figure is drawn back to its edge and stands above its tick.
    const isInside = at + 3 + textWidth(text) <= right;
    const start = isInside ? at + 3 : right - textWidth(text);
    const fits = isInside && start + textWidth(text) <= xAt(phase.toS);
    // Row 0 is the one nearest to the plot.
    const row = rowEnds.findIndex((end, i) => start > end + GAP && (i > 0 || fits));
    marks.push({
      kind: 'line',
      pen: 'axis',
      points: [
        [at, row <= 0 || !isInside ? bottom - LETTER_SIZE + 2 : bottom - LETTER_SIZE - rowHeight + 2],
        [at, bottom + 6],
      ],
    });
    // With no room in any row the name is left to the words under the figure; the tick stays.
    if (row < 0) continue;
    rowEnds[row] = start + textWidth(text);
    marks.push({ kind: 'text', lettering: 'label', anchor: 'start', at: [start, bottom - row * rowHeight - 1], text });
  }
  return marks;
}
