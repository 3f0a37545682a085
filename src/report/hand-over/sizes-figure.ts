/** Sizes before and after against the limits, on one logarithmic scale. Rows are told apart by place and word, not by colour. */
import { scaleLog } from 'd3-scale';
import type { Interval } from '../../diagnosis/finding.ts';
import { type Drawing, type Mark, rectangle, textWidth } from '../drawing.ts';
import type { Limit } from '../limits.ts';
import { NBSP } from '../numbers.ts';
import { type Desk, limitName } from './desk.ts';

export interface SizeRow {
  readonly name: string;
  readonly size: Interval;
  /** Only an upper end is known: no fault was seen. */
  readonly isBound: boolean;
}

const TICKS_MM = [0.1, 0.2, 0.3, 0.5, 1, 2, 3, 5, 10];
const TICKS_IN = [0.005, 0.01, 0.02, 0.04, 0.1, 0.2, 0.4];
const MM_PER_INCH = 25.4;
const SIDE = 24;
const LIMITS_HEIGHT = 34;
const ROW_HEIGHT = 34;
const BAR_HALF = 5;

export function sizesFigure(desk: Desk, rows: readonly SizeRow[], width: number): Drawing {
  const { given, words, q } = desk;
  const limits = [...given.limits].sort((a, b) => a.diameterMm - b.diameterMm);
  const names = Math.max(...rows.map(({ name }) => textWidth(name))) + 14;
  const low = Math.max(
    0.03,
    Math.min(0.2, ...rows.map(({ size }) => size.lo90 * 0.8), ...limits.map((l) => l.diameterMm * 0.6)),
  );
  const high = Math.max(3, ...rows.map(({ size }) => size.hi90 * 1.2), ...limits.map((l) => l.diameterMm * 1.5));
  const left = SIDE + names;
  const x = scaleLog([low, high], [left, width - SIDE]).clamp(true);
  const axisY = LIMITS_HEIGHT + rows.length * ROW_HEIGHT;
  const marks: Mark[] = [...axis(desk, { low, high, left, width, axisY, x })];
  marks.push(...limitMarks(limits, x, width, axisY));
  rows.forEach(({ name, size, isBound }, i) => {
    const y = LIMITS_HEIGHT + (i + 0.5) * ROW_HEIGHT;
    const from = isBound ? left : x(size.lo90);
    const to = Math.max(x(size.hi90), from + 3);
    marks.push(
      { kind: 'text', lettering: 'strong', anchor: 'start', at: [0, y + 4], text: name },
      { kind: 'area', pen: 'interval', points: rectangle(from, y - BAR_HALF, to - from, BAR_HALF * 2) },
    );
    if (!isBound) marks.push({ kind: 'dots', pen: 'median', radius: 3, points: [[x(size.median), y]] });
  });
  const said = rows.map(
    ({ name, size, isBound }) => `${name} ${isBound ? `< ${q.diameter(size.hi90)}` : q.interval(size)}`,
  );
  return {
    width,
    height: axisY + 30,
    title: words.figure.sizesTitle,
    description: words.figure.sizesDescription(
      said.join('; '),
      limits.map((limit) => limitName(desk, limit)).join(', '),
    ),
    marks,
  };
}

interface Scale {
  readonly low: number;
  readonly high: number;
  readonly left: number;
  readonly width: number;
  readonly axisY: number;
  readonly x: (mm: number) => number;
}

function axis({ given, q }: Desk, { low, high, left, width, axisY, x }: Scale): readonly Mark[] {
  const inMillimetres = given.units.length === 'mm';
  const ticks = (inMillimetres ? TICKS_MM : TICKS_IN.map((inch) => inch * MM_PER_INCH)).filter(
    (tick) => tick >= low && tick <= high,
  );
  const label = (mm: number): string =>
    inMillimetres ? q.number(mm, mm < 1 ? 1 : 0) : q.number(mm / MM_PER_INCH, mm < 2.5 ? 3 : 1);
  const marks: Mark[] = [
    {
      kind: 'line',
      pen: 'axis',
      points: [
        [left, axisY],
        [width - SIDE, axisY],
      ],
    },
  ];
  ticks.forEach((tick, i) => {
    const unit = i === ticks.length - 1 ? `${NBSP}${given.units.length}` : '';
    marks.push(
      {
        kind: 'line',
        pen: 'axis',
        points: [
          [x(tick), axisY - 4],
          [x(tick), axisY + 4],
        ],
      },
      {
        kind: 'text',
        lettering: 'quiet',
        anchor: i === ticks.length - 1 ? 'end' : 'middle',
        at: [Math.min(x(tick) + (i === ticks.length - 1 ? 14 : 0), width), axisY + 22],
        text: `${label(tick)}${unit}`,
      },
    );
  });
  return marks;
}

function limitMarks(
  limits: readonly Limit[],
  x: (mm: number) => number,
  width: number,
  axisY: number,
): readonly Mark[] {
  const marks: Mark[] = [];
  // Labels alternate in height when they would touch.
  let lastEnd = Number.NEGATIVE_INFINITY;
  for (const limit of limits) {
    const at = x(limit.diameterMm);
    const top = at < lastEnd + 8 ? 30 : 14;
    const end = at + 4 + textWidth(limit.label);
    const isAtEdge = end > width;
    lastEnd = isAtEdge ? at : end;
    marks.push(
      {
        kind: 'line',
        pen: 'limit',
        points: [
          [at, top - 10],
          [at, axisY + 6],
        ],
      },
      {
        kind: 'text',
        lettering: 'limit',
        anchor: isAtEdge ? 'end' : 'start',
        at: [isAtEdge ? at - 4 : at + 4, top],
        text: limit.label,
      },
    );
  }
  return marks;
}
