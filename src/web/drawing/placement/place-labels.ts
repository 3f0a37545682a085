import {
  type Box,
  grow,
  inside,
  nearestOf,
  overlaps,
  type Point,
  pt,
  type Segment,
  segmentCrosses,
} from './geometry.ts';
import type { Label, LabelWish } from './scheme.ts';
import { textWidth, wrap } from './text-width.ts';

export interface LabelField {
  readonly bounds: Box;
  /** What a label may not lie on: symbols, walls. */
  readonly solids: readonly Box[];
  readonly lines: readonly { readonly segment: Segment; readonly width: number }[];
  readonly nameSize: number;
  readonly stateSize: number;
}

const LINE_HEIGHT = 1.22;
const CLEAR = 5;
/** How far a label may stand from what it names, with a leader line beyond the first. */
const REACHES = [CLEAR + 1, 14, 24, 36, 50, 66, 84, 104, 126] as const;
const LEADER_FROM = 14;

interface Shape {
  readonly lines: readonly string[];
  readonly w: number;
  readonly h: number;
}

/** A name on one, two or three lines, with its state below. */
function shapesOf(wish: LabelWish, field: LabelField): readonly Shape[] {
  const seen = new Set<string>();
  const shapes: Shape[] = [];
  for (const count of [1, 2, 3]) {
    const lines = wrap(wish.name, count);
    const key = lines.join('\n');
    if (seen.has(key)) continue;
    seen.add(key);
    const nameWidth = Math.max(...lines.map((line) => textWidth(line, field.nameSize, wish.warn === true)));
    const stateWidth = wish.stateRoom === undefined ? 0 : textWidth(wish.stateRoom, field.stateSize, true);
    shapes.push({
      lines,
      w: Math.ceil(Math.max(nameWidth, stateWidth)) + 2,
      h: Math.ceil(
        lines.length * field.nameSize * LINE_HEIGHT +
          (wish.stateRoom === undefined ? 0 : field.stateSize * LINE_HEIGHT),
      ),
    });
  }
  return shapes;
}

interface Candidate {
  readonly box: Box;
  readonly align: Label['align'];
  readonly reach: number;
  readonly cost: number;
}

/** Places around a box, nearest and preferred side first. */
function* candidates(of: Box, shape: Shape, prefer: LabelWish['prefer'], shapeCost: number): Generator<Candidate> {
  const cx = of.x + of.w / 2;
  const cy = of.y + of.h / 2;
  const slides = [0, -0.5, 0.5, -0.25, 0.25, -1, 1];
  for (const reach of REACHES) {
    for (const side of ['below', 'above', 'right', 'left'] as const) {
      for (const slide of slides) {
        const upright = side === 'below' || side === 'above';
        const x = upright
          ? cx - shape.w / 2 + slide * shape.w
          : side === 'right'
            ? of.x + of.w + reach
            : of.x - reach - shape.w;
        const y = !upright
          ? cy - shape.h / 2 + slide * shape.h
          : side === 'below'
            ? of.y + of.h + reach
            : of.y - reach - shape.h;
        const align =
          side === 'right'
            ? 'start'
            : side === 'left'
              ? 'end'
              : slide > 0.2
                ? 'start'
                : slide < -0.2
                  ? 'end'
                  : 'middle';
        const cost =
          reach + (side === prefer ? 0 : 12) + Math.abs(slide) * 14 + shapeCost + (reach > LEADER_FROM ? 10 : 0);
        yield { box: { x, y, w: shape.w, h: shape.h }, align, reach, cost };
      }
    }
  }
}

/** From the middle of the label's nearest edge to the thing itself. */
function leaderOf(box: Box, of: Box): readonly Point[] {
  const target = nearestOf(of, pt(box.x + box.w / 2, box.y + box.h / 2));
  const left = Math.abs(target.x - box.x) < Math.abs(target.x - box.x - box.w);
  const above = target.y < box.y;
  const below = target.y > box.y + box.h;
  const start =
    above || below
      ? pt(Math.min(Math.max(target.x, box.x + 6), box.x + box.w - 6), above ? box.y - 1 : box.y + box.h + 1)
      : pt(left ? box.x - 2 : box.x + box.w + 2, box.y + box.h / 2);
  return [start, nearestOf(of, start)];
}

function tryAll(order: readonly LabelWish[], field: LabelField): { labels: Label[]; failed: LabelWish[] } {
  const labels: Label[] = [];
  const failed: LabelWish[] = [];
  const leaders: Segment[] = [];
  for (const wish of order) {
    let best: { candidate: Candidate; shape: Shape; leader?: readonly Point[]; cost: number } | undefined;
    for (const [k, shape] of shapesOf(wish, field).entries()) {
      for (const candidate of candidates(wish.of, shape, wish.prefer, k * 7)) {
        if (best !== undefined && candidate.cost >= best.cost) continue;
        const box = grow(candidate.box, 3);
        if (!inside(candidate.box, field.bounds)) continue;
        if (field.solids.some((solid) => overlaps(box, solid))) continue;
        if (labels.some((label) => overlaps(box, label.box))) continue;
        if (field.lines.some(({ segment, width }) => segmentCrosses(segment, grow(box, width / 2)))) continue;
        if (leaders.some((segment) => segmentCrosses(segment, box))) continue;
        let cost = candidate.cost;
        let leader: readonly Point[] | undefined;
        if (candidate.reach > LEADER_FROM) {
          leader = leaderOf(candidate.box, wish.of);
          const segment: Segment = [leader[0]!, leader[1]!];
          if (labels.some((label) => segmentCrosses(segment, grow(label.box, 2)))) continue;
          if (field.solids.some((solid) => !overlaps(solid, grow(wish.of, 2)) && segmentCrosses(segment, solid)))
            continue;
          if (leaders.some(([a, b]) => crosses(segment, [a, b]))) continue;
          for (const line of field.lines) if (crosses(segment, line.segment)) cost += 25;
          if (best !== undefined && cost >= best.cost) continue;
        }
        best = { candidate, shape, cost, ...(leader === undefined ? {} : { leader }) };
      }
    }
    if (best === undefined) {
      failed.push(wish);
      continue;
    }
    if (best.leader !== undefined) leaders.push([best.leader[0]!, best.leader[1]!]);
    labels.push({
      id: wish.id,
      part: wish.part,
      box: best.candidate.box,
      lines: best.shape.lines,
      hasState: wish.stateRoom !== undefined,
      align: best.candidate.align,
      warn: wish.warn === true,
      ...(best.leader === undefined ? {} : { leader: best.leader }),
    });
  }
  return { labels, failed };
}

/** Whether two segments cross. */
function crosses([a, b]: Segment, [c, d]: Segment): boolean {
  const side = (p: Point, q: Point, r: Point) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** More tries than labels: each moves one label that found no room to the front. */
const TRIES = 14;

/**
 * Places labels so that none lies on another, on a symbol or on a line.
 * @param wishes labels, most important first
 * @param field what is in the way
 * @returns labels; `missing` lists those that found no room although they must
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  field: LabelField,
): { readonly labels: readonly Label[]; readonly missing: readonly LabelWish[] } {
  const must = wishes.filter((w) => w.optional !== true);
  const may = wishes.filter((w) => w.optional === true);
  let order = [...must, ...may];
  let best: { labels: Label[]; failed: LabelWish[] } | undefined;
  const score = (failed: readonly LabelWish[]) => failed.reduce((sum, w) => sum + (w.optional === true ? 1 : 100), 0);
  for (let k = 0; k < TRIES; k++) {
    const result = tryAll(order, field);
    if (best === undefined || score(result.failed) < score(best.failed)) best = result;
    const blocked = result.failed.find((w) => w.optional !== true) ?? result.failed[0];
    if (blocked === undefined || order[0] === blocked) break;
    order = [blocked, ...order.filter((w) => w !== blocked)];
  }
  return { labels: best!.labels, missing: best!.failed.filter((w) => w.optional !== true) };
}
