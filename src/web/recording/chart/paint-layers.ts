/** Draws the layers of one lane on a canvas, in canvas pixels. */
import type { Colours } from './colours.ts';
import type { Layer, Pen } from './lanes.ts';
import type { Reduced } from './source.ts';
import type { View } from './view.ts';

export interface LayerFrame {
  readonly ctx: CanvasRenderingContext2D;
  readonly colours: Colours;
  readonly reduced: Reduced;
  readonly pauses: readonly View[];
  readonly xAt: (timeS: number) => number;
  readonly yAt: (si: number) => number;
  readonly top: number;
  readonly bottom: number;
  /** Canvas pixels per CSS pixel. */
  readonly ratio: number;
}

const penColour = (pen: Pen, colours: Colours): string =>
  ({
    recorded: colours.ink,
    model: colours.accent,
    rival: colours.rival,
    command: colours.ink,
  })[pen];

/** Samples at least so many CSS pixels apart are drawn as dots too. */
const DOT_SPACING = 7;

/** Runs of present values that no pause parts, as [from, to) of bins. */
function runs({ reduced, pauses }: LayerFrame, low: Float32Array): readonly (readonly [number, number])[] {
  const found: [number, number][] = [];
  let start = -1;
  let pause = 0;
  for (let k = 0; k < reduced.count; k++) {
    const t = reduced.x[k]!;
    let isCut = false;
    while (pause < pauses.length && pauses[pause]!.toS <= t) {
      if (k > 0 && pauses[pause]!.fromS >= reduced.x[k - 1]!) isCut = true;
      pause++;
    }
    const isAbsent = Number.isNaN(low[k]!);
    if (start >= 0 && (isAbsent || isCut)) {
      found.push([start, k]);
      start = -1;
    }
    if (start < 0 && !isAbsent) start = k;
  }
  if (start >= 0) found.push([start, reduced.count]);
  return found;
}

/** A line through the samples, or a filled envelope of the extremes where many samples share a pixel. */
function line(frame: LayerFrame, column: number, pen: Pen, isStepped: boolean): void {
  const { ctx, reduced, xAt, yAt, ratio } = frame;
  const low = reduced.low(column);
  const high = reduced.high(column);
  const colour = penColour(pen, frame.colours);
  const isEnvelope = reduced.bins.size > 1;
  const half = (pen === 'model' ? 1.1 : 0.7) * ratio;
  ctx.beginPath();
  for (const [from, to] of runs(frame, low)) {
    if (isEnvelope) {
      envelope(frame, low, high, from, to, half);
      continue;
    }
    ctx.moveTo(xAt(reduced.x[from]!), yAt(low[from]!));
    for (let k = from + 1; k < to; k++) {
      const x = xAt(reduced.x[k]!);
      if (isStepped) ctx.lineTo(x, yAt(low[k - 1]!));
      ctx.lineTo(x, yAt(low[k]!));
    }
  }
  if (isEnvelope) {
    ctx.fillStyle = colour;
    ctx.fill();
    return;
  }
  ctx.strokeStyle = colour;
  ctx.lineWidth = 2 * half;
  ctx.lineJoin = 'round';
  ctx.setLineDash(pen === 'rival' ? [5 * ratio, 4 * ratio] : []);
  ctx.stroke();
  ctx.setLineDash([]);
}

/** One closed outline: along the largest values and back along the smallest, each bin reaching to its neighbour. */
function envelope(
  { ctx, reduced, xAt, yAt }: LayerFrame,
  low: Float32Array,
  high: Float32Array,
  from: number,
  to: number,
  half: number,
): void {
  for (let k = from; k < to; k++) {
    const before = k > from ? low[k - 1]! : high[k]!;
    const y = yAt(before > high[k]! ? before : high[k]!) - half;
    if (k === from) ctx.moveTo(xAt(reduced.x[k]!), y);
    else ctx.lineTo(xAt(reduced.x[k]!), y);
  }
  for (let k = to - 1; k >= from; k--) {
    const before = k > from ? high[k - 1]! : low[k]!;
    ctx.lineTo(xAt(reduced.x[k]!), yAt(before < low[k]! ? before : low[k]!) + half);
  }
  ctx.closePath();
}

/** Dots stand above every line, each on a ring of paper, so that none drowns. */
function dots(frame: LayerFrame, column: number, pen: Pen, spacing: number): void {
  const { ctx, colours, reduced, xAt, yAt, ratio } = frame;
  const low = reduced.low(column);
  const radius = 1.6 * ratio;
  const ring = new Path2D();
  const core = new Path2D();
  let last = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < reduced.count; k++) {
    const x = xAt(reduced.x[k]!);
    if (Number.isNaN(low[k]!) || x - last < spacing * ratio) continue;
    last = x;
    const y = yAt(low[k]!);
    ring.moveTo(x + radius + 1.2 * ratio, y);
    ring.arc(x, y, radius + 1.2 * ratio, 0, 2 * Math.PI);
    core.moveTo(x + radius, y);
    core.arc(x, y, radius, 0, 2 * Math.PI);
  }
  ctx.fillStyle = colours.paper;
  ctx.fill(ring);
  ctx.fillStyle = penColour(pen, colours);
  ctx.fill(core);
}

function band(frame: LayerFrame, lowColumn: number, highColumn: number, pen: 'model' | 'rival'): void {
  const { ctx, colours, reduced, xAt, yAt, top, bottom } = frame;
  const low = reduced.low(lowColumn);
  const high = reduced.high(highColumn);
  const inside = (y: number): number => Math.min(bottom, Math.max(top, y));
  ctx.beginPath();
  for (const [from, to] of runs(frame, low)) {
    for (let k = from; k < to; k++) {
      const x = xAt(reduced.x[k]!);
      if (k === from) ctx.moveTo(x, inside(yAt(high[k]!)));
      else ctx.lineTo(x, inside(yAt(high[k]!)));
    }
    for (let k = to - 1; k >= from; k--) ctx.lineTo(xAt(reduced.x[k]!), inside(yAt(low[k]!)));
    ctx.closePath();
  }
  ctx.fillStyle = pen === 'model' ? colours.band : colours.rivalBand;
  ctx.fill();
}

/** Marked times, shaded over the lane and edged at its foot, so that not colour alone tells them. */
function marked(frame: LayerFrame, column: number): void {
  const { ctx, colours, reduced, xAt, top, bottom, ratio } = frame;
  const high = reduced.high(column);
  ctx.fillStyle = colours.warn;
  let from = -1;
  for (let k = 0; k <= reduced.count; k++) {
    const isMarked = k < reduced.count && high[k]! > 0.5;
    if (isMarked && from < 0) from = k;
    if (isMarked || from < 0) continue;
    const left = xAt(reduced.x[from]!);
    const width = Math.max(2 * ratio, xAt(reduced.x[k - 1]!) - left);
    ctx.globalAlpha = 0.12;
    ctx.fillRect(left, top, width, bottom - top);
    ctx.globalAlpha = 1;
    ctx.fillRect(left, bottom - 3 * ratio, width, 3 * ratio);
    from = -1;
  }
}

export function paintLayers(layers: readonly Layer[], frame: LayerFrame): void {
  const { reduced, xAt, ratio } = frame;
  const spread =
    reduced.count > 1 ? (xAt(reduced.x[reduced.count - 1]!) - xAt(reduced.x[0]!)) / (reduced.count - 1) / ratio : 0;
  for (const layer of layers) {
    if (layer.kind === 'band') band(frame, layer.low, layer.high, layer.pen);
    else if (layer.kind === 'marked') marked(frame, layer.column);
    else if (layer.kind === 'dots') dots(frame, layer.column, layer.pen, 4.4);
    else {
      line(frame, layer.column, layer.pen, layer.kind === 'steps');
      if (layer.kind === 'line' && layer.pen === 'recorded' && reduced.bins.size === 1 && spread >= DOT_SPACING)
        dots(frame, layer.column, layer.pen, 0);
    }
  }
}
