/** A modelled trace on a figure's axes: its line and the band around it. */
import type { Overlay } from '../diagnosis/finding.ts';
import type { Point } from './drawing.ts';
import type { PlotFrame } from './plot-frame.ts';

/** One dot per so many figure units: dense enough to be the record, open enough to see the line through. */
export const UNITS_PER_DOT = 3.5;

export const overlayLine = (overlay: Overlay, { xAt, yAt }: PlotFrame): Point[] =>
  overlay.timeS.map((t, i): Point => [xAt(t), yAt(overlay.modelledGaugePa[i] ?? Number.NaN)]);

/** Outline of the band, clipped to the plot. */
export function overlayBand(overlay: Overlay, { xAt, yAt, top, bottom }: PlotFrame): Point[] {
  const upper: Point[] = [];
  const lower: Point[] = [];
  const clip = (value: number): number => Math.min(bottom, Math.max(top, value));
  overlay.timeS.forEach((t, i) => {
    const mid = overlay.modelledGaugePa[i] ?? Number.NaN;
    const half = overlay.bandPa[i] ?? Number.NaN;
    if (!Number.isFinite(mid + half)) return;
    upper.push([xAt(t), clip(yAt(mid + half))]);
    lower.push([xAt(t), clip(yAt(mid - half))]);
  });
  return [...upper, ...lower.reverse()];
}
