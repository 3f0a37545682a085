/** Where the names of the phases stand in the strip above the plot: in two rows, none over another. */
import type { Phase } from '../../../recording/recording.ts';
import type { View } from './view.ts';

export interface PlacedName {
  readonly index: number;
  readonly left: number;
  readonly row: 0 | 1;
  readonly text: string;
}

const GAP = 6;
const INSET = 4;

/** Names of what is seen; one with no room in either row is left to the table of phases. */
export function placeNames(
  phases: readonly Phase[],
  view: View,
  width: number,
  wordOf: (phase: Phase) => string,
  wideOf: (text: string) => number,
): readonly PlacedName[] {
  const perSecond = width / (view.toS - view.fromS);
  const ends = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const placed: PlacedName[] = [];
  phases.forEach((phase, index) => {
    if (phase.toS <= view.fromS || phase.fromS >= view.toS) return;
    const from = Math.max(0, (phase.fromS - view.fromS) * perSecond);
    const to = Math.min(width, (phase.toS - view.fromS) * perSecond);
    const text = wordOf(phase);
    const wide = wideOf(text);
    const left = Math.min(from + INSET, width - wide);
    const isWithin = left >= from && left + wide <= to;
    for (const row of isWithin ? ([1, 0] as const) : ([0] as const)) {
      if (left < ends[row]! + GAP || left < 0) continue;
      ends[row] = left + wide;
      placed.push({ index, left, row, text });
      return;
    }
  });
  return placed;
}
