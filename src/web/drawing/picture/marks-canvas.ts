import { lengthOf, type Point, pointAlong } from '../placement/geometry.ts';
import type { Scheme, SymbolKind } from '../placement/scheme.ts';
import { planMarks } from '../state/flow-marks.ts';
import type { RunView } from '../state/run-view.ts';

/** Vapour in the gas, by volume, from which a mark is filled. Judgement: well above what air over carbon holds. */
const VAPOUR_SHOWN = 0.05;

/** Marks pass behind these. */
const OVER: ReadonlySet<SymbolKind> = new Set(['valve', 'check', 'filter', 'orifice', 'pump']);
const SYMBOL_PX = 14;

export interface MarkColours {
  readonly ink: string;
  readonly paper: string;
}

interface Way {
  readonly passage: string;
  readonly points: readonly Point[];
  readonly length: number;
}

/** The marks of all passages, on a canvas over the picture. */
export class MarksCanvas {
  private readonly context: CanvasRenderingContext2D | null;
  private readonly ways: readonly Way[];
  private readonly symbols: readonly Point[];
  private readonly width: number;
  private readonly height: number;

  constructor(canvas: HTMLCanvasElement, scheme: Scheme, density: number) {
    this.width = scheme.width;
    this.height = scheme.height;
    canvas.width = Math.round(scheme.width * density);
    canvas.height = Math.round(scheme.height * density);
    this.context = canvas.getContext('2d');
    this.context?.setTransform(density, 0, 0, density, 0, 0);
    this.symbols = scheme.figures.filter((f) => OVER.has(f.kind)).map((f) => f.at);
    this.ways = scheme.ways.map(({ passage, points }) => ({ passage, points, length: lengthOf(points) }));
  }

  draw(view: RunView, tempo: number, colours: MarkColours): void {
    const g = this.context;
    if (g === null) return;
    g.clearRect(0, 0, this.width, this.height);
    for (const way of this.ways) {
      const passage = view.passage(way.passage);
      if (passage === undefined) continue;
      const flow = view.flowKgPerS(way.passage);
      const plan = planMarks(flow, view.passedKg(way.passage), tempo);
      if (plan === undefined) continue;
      const upstream = flow >= 0 ? passage.from : passage.to;
      const isVapour = (view.value(`${upstream}.vapourMoleFraction`) ?? 0) > VAPOUR_SHOWN;
      for (let s = plan.firstPx; s < way.length; s += plan.spacingPx) {
        const at = pointAlong(way.points, s);
        if (this.symbols.some((c) => Math.hypot(c.x - at.x, c.y - at.y) < SYMBOL_PX)) continue;
        drawMark(g, plan.mark, at.x, at.y, flow < 0 ? at.angle + Math.PI : at.angle, isVapour, colours);
      }
    }
  }
}

/** One mark: dot, bar, arrowhead, large arrowhead, double arrowhead; filled for vapour, hollow for air. */
export function drawMark(
  g: CanvasRenderingContext2D,
  kind: number,
  x: number,
  y: number,
  angle: number,
  isVapour: boolean,
  { ink, paper }: MarkColours,
): void {
  g.save();
  g.translate(x, y);
  g.rotate(angle);
  g.beginPath();
  switch (kind) {
    case 0:
      g.arc(0, 0, 2.9, 0, 2 * Math.PI);
      break;
    case 1:
      g.rect(-4.5, -2, 9, 4);
      break;
    case 2:
      g.moveTo(-4, -3.6);
      g.lineTo(4.5, 0);
      g.lineTo(-4, 3.6);
      g.closePath();
      break;
    case 3:
      g.moveTo(-6, -5);
      g.lineTo(6.5, 0);
      g.lineTo(-6, 5);
      g.closePath();
      break;
    default:
      for (const dx of [-5, 3]) {
        g.moveTo(dx - 4, -5);
        g.lineTo(dx + 5, 0);
        g.lineTo(dx - 4, 5);
        g.closePath();
      }
  }
  g.lineWidth = 2;
  g.strokeStyle = isVapour ? paper : ink;
  if (isVapour) {
    g.stroke();
    g.fillStyle = ink;
    g.fill();
  } else {
    g.lineWidth = 2.2;
    g.stroke();
    g.fillStyle = paper;
    g.fill();
  }
  g.restore();
}
