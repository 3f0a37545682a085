/** The figures of a sheet at a given width: one trace per recording, one size. */
import type { Drawing } from './drawing.ts';
import { pressureOf } from './pressure-names.ts';
import type { Sheet } from './sheet.ts';
import { sizeFigure } from './size-figure.ts';
import { traceFigure } from './trace-figure.ts';
import { CAUSE_WORDS, firstCause } from './words.ts';

export interface TracePlate {
  readonly label: string;
  /** Which pressure is drawn. */
  readonly pressure: string;
  readonly drawing: Drawing;
  /** What the lines are, as the key under the figure says it. */
  readonly chosen: string;
  readonly rival: string | null;
}

/** One trace for each recording that has an overlay of the first cause. */
export function tracePlates(sheet: Sheet, width: number): readonly TracePlate[] {
  const first = firstCause(sheet.finding);
  if (first === null) return [];
  return sheet.recordings.flatMap((recording, index) => {
    const overlays = sheet.finding.overlays.filter((overlay) => overlay.recording === index);
    const chosen = overlays.find((overlay) => overlay.cause === first.id) ?? overlays[0];
    if (chosen === undefined) return [];
    const rival =
      overlays.find((overlay) => overlay.cause === 'none' && overlay !== chosen) ??
      overlays.find((overlay) => overlay !== chosen);
    return [
      {
        label: recording.label,
        pressure: pressureOf(recording.procedure),
        drawing: traceFigure({ recording, chosen, width, ...(rival === undefined ? {} : { rival }) }),
        chosen: CAUSE_WORDS[chosen.cause].name,
        rival:
          rival === undefined
            ? null
            : rival.cause === 'none'
              ? 'the best fit without a fault'
              : CAUSE_WORDS[rival.cause].name,
      },
    ];
  });
}

export function sizePlate(sheet: Sheet, width: number): Drawing | null {
  const size = firstCause(sheet.finding)?.diameterMm ?? sheet.finding.diameterMm;
  return size === null ? null : sizeFigure({ size, limits: sheet.limits, width });
}
