/** The size on a logarithmic scale with its 90 % interval and the reference sizes. */
import { scaleLog } from 'd3-scale';
import type { Interval } from '../diagnosis/finding.ts';
import { type Drawing, type Mark, rectangle, textWidth } from './drawing.ts';
import type { Limit } from './limits.ts';
import { intervalInWords, millimetres, NBSP } from './numbers.ts';

const TICKS_MM = [0.1, 0.2, 0.3, 0.5, 1, 2, 3, 5, 10];
const SIDE = 24;
const LINE_Y = 62;
const BAR_HALF = 5;

export interface SizeFigure {
  readonly size: Interval;
  readonly limits: readonly Limit[];
  readonly width: number;
}

export function sizeFigure({ size, limits, width }: SizeFigure): Drawing {
  const smallest = Math.min(0.2, size.lo90 * 0.8, ...limits.map((limit) => limit.diameterMm * 0.6));
  const low = Math.max(0.05, smallest);
  const high = Math.max(3, size.hi90 * 1.2, ...limits.map((limit) => limit.diameterMm * 1.5));
  const x = scaleLog([low, high], [SIDE, width - SIDE]).clamp(true);
  const marks: Mark[] = [
    {
      kind: 'line',
      pen: 'axis',
      points: [
        [SIDE, LINE_Y],
        [width - SIDE, LINE_Y],
      ],
    },
  ];
  const shown = TICKS_MM.filter((tick) => tick >= low && tick <= high);
  shown.forEach((tick, i) => {
    const at = x(tick);
    marks.push({
      kind: 'line',
      pen: 'axis',
      points: [
        [at, LINE_Y - 4],
        [at, LINE_Y + 4],
      ],
    });
    const unit = i === shown.length - 1 ? `${NBSP}mm` : '';
    marks.push({ kind: 'text', lettering: 'quiet', anchor: 'middle', at: [at, LINE_Y + 22], text: `${tick}${unit}` });
  });
  // Labels of limits alternate in height when they would touch.
  let lastEnd = Number.NEGATIVE_INFINITY;
  for (const limit of [...limits].sort((a, b) => a.diameterMm - b.diameterMm)) {
    const at = x(limit.diameterMm);
    const isTight = at < lastEnd + 8;
    const top = isTight ? 30 : 14;
    lastEnd = at + 4 + textWidth(limit.label);
    const isAtEdge = lastEnd > width;
    marks.push({
      kind: 'line',
      pen: 'limit',
      points: [
        [at, top - 10],
        [at, LINE_Y + 6],
      ],
    });
    marks.push({
      kind: 'text',
      lettering: 'limit',
      anchor: isAtEdge ? 'end' : 'start',
      at: [isAtEdge ? at - 4 : at + 4, top],
      text: limit.label,
    });
  }
  const from = x(size.lo90);
  const to = Math.max(x(size.hi90), from + 3);
  marks.push({ kind: 'area', pen: 'interval', points: rectangle(from, LINE_Y - BAR_HALF, to - from, BAR_HALF * 2) });
  marks.push({ kind: 'dots', pen: 'median', radius: 3, points: [[x(size.median), LINE_Y]] });
  const references = limits.map((limit) => `${limit.label} at ${millimetres(limit.diameterMm)} mm`).join(', ');
  return {
    width,
    height: LINE_Y + 30,
    title: 'Equivalent diameter with 90 % interval',
    description: `Equivalent diameter ${intervalInWords(size)} on a logarithmic scale, beside the reference sizes ${references}.`,
    marks,
  };
}
