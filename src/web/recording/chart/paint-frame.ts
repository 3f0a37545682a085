/** Draws what stands around the traces: phases, pauses, grid lines, titles and numbers. Canvas pixels. */
import type { Phase } from '../../../recording/recording.ts';
import type { Colours } from './colours.ts';
import { laneTicks, type PlacedLane, type Placing } from './lanes.ts';
import type { View } from './view.ts';

export interface Ground {
  readonly ctx: CanvasRenderingContext2D;
  readonly colours: Colours;
  readonly placing: Placing;
  readonly phases: readonly Phase[];
  readonly pauses: readonly View[];
  readonly xAt: (timeS: number) => number;
  readonly left: number;
  readonly right: number;
  /** Top of the plot. */
  readonly top: number;
  readonly ratio: number;
  /** Decimal mark of the language. */
  readonly mark: string;
  readonly font: (weight: number, px: number) => string;
}

export const yOf = (place: PlacedLane, top: number, ratio: number): ((si: number) => number) => {
  const [low, high] = place.lane.range;
  const floor = top + (place.top + place.height) * ratio;
  const perSi = (place.height * ratio) / (high - low || 1);
  return (si) => floor - (si - low) * perSi;
};

/** Under the traces: every second phase is shaded, boundaries are thin lines. */
export function paintGround(ground: Ground): void {
  const { ctx, colours, placing, phases, pauses, xAt, left, right, top, ratio } = ground;
  const bottom = top + placing.height * ratio;
  const clamp = (x: number): number => Math.min(right, Math.max(left, x));
  phases.forEach((phase, k) => {
    const from = clamp(xAt(phase.fromS));
    const to = clamp(xAt(phase.toS));
    if (to <= from) return;
    if (k % 2 === 1) {
      ctx.fillStyle = colours.shade;
      ctx.fillRect(from, top, to - from, bottom - top);
    }
    if (k > 0 && from > left) {
      ctx.fillStyle = colours.rule;
      ctx.fillRect(Math.round(from), top, ratio, bottom - top);
    }
  });
  for (const pause of pauses) paintPause(ground, clamp(xAt(pause.fromS)), clamp(xAt(pause.toS)), bottom);
  for (const place of placing.lanes) {
    const yAt = yOf(place, top, ratio);
    ctx.fillStyle = colours.rule;
    for (const tick of laneTicks(place.lane)) ctx.fillRect(left, Math.round(yAt(tick.si)), right - left, ratio);
  }
}

/** Hatched: nothing was recorded here. */
function paintPause({ ctx, colours, top, ratio }: Ground, from: number, to: number, bottom: number): void {
  if (to - from < ratio) return;
  ctx.save();
  ctx.beginPath();
  ctx.rect(from, top, to - from, bottom - top);
  ctx.clip();
  ctx.beginPath();
  const step = 8 * ratio;
  for (let x = from - (bottom - top); x < to; x += step) {
    ctx.moveTo(x, bottom);
    ctx.lineTo(x + bottom - top, top);
  }
  ctx.strokeStyle = colours.rule;
  ctx.lineWidth = ratio;
  ctx.stroke();
  ctx.restore();
}

/** Over the traces: titles, units and numbers, outside the plot so that nothing crosses them. */
export function paintTitles(ground: Ground): void {
  const { ctx, colours, placing, left, top, ratio, font, mark } = ground;
  const quiet = font(400, 13);
  const bold = font(700, 14);
  for (const place of placing.lanes) {
    const { lane } = place;
    const yAt = yOf(place, top, ratio);
    ctx.textBaseline = 'alphabetic';
    ctx.fillStyle = colours.ink;
    ctx.font = bold;
    if (place.titleY === null) {
      ctx.textAlign = 'left';
      const middle = top + (place.top + Math.min(place.height, 40) / 2) * ratio;
      const words = wrap(ctx, lane.title, (placing.gutter - 56) * ratio);
      const lines = lane.size === 'switch' ? [lane.title] : words;
      lines.forEach((text, k) => {
        ctx.fillText(text, 0, middle + (k * 16 - (lane.size === 'switch' ? -5 : 2)) * ratio);
      });
      if (lane.states === undefined) {
        ctx.font = quiet;
        ctx.fillStyle = colours.quiet;
        ctx.fillText(lane.shown.unit, 0, middle + (lines.length * 16 - 2) * ratio);
      }
    } else {
      ctx.textAlign = 'left';
      const y = top + place.titleY * ratio;
      ctx.fillText(lane.title, left, y);
      if (lane.states === undefined) {
        const wide = ctx.measureText(`${lane.title} `).width;
        ctx.font = quiet;
        ctx.fillStyle = colours.quiet;
        ctx.fillText(lane.shown.unit, left + wide, y);
      }
    }
    ctx.font = quiet;
    ctx.fillStyle = colours.quiet;
    ctx.textAlign = 'right';
    ctx.textBaseline = 'middle';
    for (const tick of laneTicks(lane, mark)) ctx.fillText(tick.text, left - 7 * ratio, yAt(tick.si));
    if (lane.states !== undefined && place.titleY !== null) {
      ctx.fillText(lane.states[1], left - 7 * ratio, yAt(1));
      ctx.fillText(lane.states[0], left - 7 * ratio, yAt(0));
    }
  }
}

function wrap(ctx: CanvasRenderingContext2D, text: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && ctx.measureText(`${last} ${word}`).width <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
