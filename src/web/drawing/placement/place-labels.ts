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
const REACHES = [CLEAR + 1, 14, 24, 36, 50, 64, 78, 90, 102, 114, 126, 138, 150, 164, 178, 194, 210, 230, 255] as const;
const LEADER_FROM = 14;
const LINE_CLEAR = 13;
/** Wider than any symbol: tank, canister, boxes of the engine. */
const LARGE = 90;

interface Shape {
  readonly lines: readonly string[];
  readonly faultLines: Label['faultLines'];
  readonly w: number;
  readonly h: number;
}

/** A name on one, two or three lines, its state below, and what is wrong on one line or two. */
function shapesOf(wish: LabelWish, field: LabelField): readonly Shape[] {
  const { nameSize, stateSize } = field;
  const strong = (text: string) => textWidth(text, stateSize, true);
  const { faultRoom: fault, stateRoom } = wish;
  const faults: readonly { readonly lines: Label['faultLines']; readonly w: number }[] =
    fault === undefined
      ? [{ lines: 0, w: 0 }]
      : fault.size === ''
        ? [{ lines: 1, w: strong(fault.name) }]
        : [
            { lines: 1, w: strong(`${fault.name} ${fault.size}`) },
            { lines: 2, w: Math.max(strong(fault.name), strong(fault.size)) },
          ];
  const seen = new Set<string>();
  const shapes: Shape[] = [];
  for (const count of [1, 2, 3]) {
    const lines = wish.name === '' ? [] : wrap(wish.name, count);
    const key = lines.join('\n');
    if (seen.has(key)) continue;
    seen.add(key);
    const nameWidth = Math.max(0, ...lines.map((line) => textWidth(line, nameSize)));
    const stateWidth = stateRoom === undefined ? 0 : strong(stateRoom);
    for (const { lines: faultLines, w } of faults) {
      const small = faultLines + (stateRoom === undefined ? 0 : 1);
      shapes.push({
        lines,
        faultLines,
        w: Math.ceil(Math.max(nameWidth, stateWidth, w)) + 2,
        h: Math.ceil((lines.length * nameSize + small * stateSize) * LINE_HEIGHT),
      });
    }
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
  // Beside a line that leaves the thing upwards or downwards, too.
  const aside = 0.5 + LINE_CLEAR / shape.w;
  const slides = [0, -0.5, 0.5, -0.25, 0.25, -aside, aside, -1, 1];
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

/** A place for a label that nothing fixed is in the way of. */
interface Spot {
  readonly box: Box;
  readonly clear: Box;
  readonly align: Label['align'];
  readonly shape: Shape;
  readonly leader?: readonly Point[];
  readonly cost: number;
}

/** Lines run straight across or down, so each is a box as wide as the line. */
const wallsOf = (field: LabelField): readonly Box[] =>
  field.lines.map(({ segment: [a, b], width }) =>
    grow({ x: Math.min(a.x, b.x), y: Math.min(a.y, b.y), w: Math.abs(a.x - b.x), h: Math.abs(a.y - b.y) }, width / 2),
  );

/** Every place that a label could take if it were alone on the drawing, best first. */
function spotsOf(wish: LabelWish, field: LabelField, walls: readonly Box[]): readonly Spot[] {
  const spots: Spot[] = [];
  for (const [k, shape] of shapesOf(wish, field).entries()) {
    for (const { box, align, reach, cost } of candidates(wish.of, shape, wish.prefer, k * 9)) {
      if (!inside(box, field.bounds)) continue;
      const clear = grow(box, 3);
      if (field.solids.some((solid) => overlaps(clear, solid))) continue;
      if (walls.some((wall) => overlaps(clear, wall))) continue;
      let dear = cost + beside(box, wish.of, field.solids);
      let leader: readonly Point[] | undefined;
      if (reach > LEADER_FROM) {
        leader = leaderOf(box, wish.of);
        const segment: Segment = [leader[0]!, leader[1]!];
        if (field.solids.some((solid) => isCrossed(solid, segment, wish.of))) continue;
        for (const line of field.lines) if (crosses(segment, line.segment)) dear += 25;
      }
      spots.push({ box, clear, align, shape, cost: dear, ...(leader === undefined ? {} : { leader }) });
    }
  }
  return spots.sort((a, b) => a.cost - b.cost);
}

type Spots = ReadonlyMap<LabelWish, readonly Spot[]>;

interface Try {
  readonly taken: ReadonlyMap<LabelWish, Spot>;
  readonly failed: readonly LabelWish[];
}

/** Gives each label, in this order, its best place that is still free, or after `skip` of its places the next one. */
function tryOrder(order: readonly LabelWish[], spots: Spots, skip: (i: number) => number): Try {
  const taken = new Map<LabelWish, Spot>();
  const failed: LabelWish[] = [];
  const leaders: Segment[] = [];
  for (const [i, wish] of order.entries()) {
    const others = [...taken.values()];
    const isFree = ({ clear, leader }: Spot): boolean => {
      if (others.some((other) => overlaps(clear, other.box))) return false;
      if (leaders.some((segment) => segmentCrosses(segment, clear))) return false;
      if (leader === undefined) return true;
      const segment: Segment = [leader[0]!, leader[1]!];
      if (others.some((other) => segmentCrosses(segment, grow(other.box, 2)))) return false;
      return !leaders.some((line) => crosses(segment, line));
    };
    const all = spots.get(wish)!;
    const from = skip(i);
    const spot = (from === 0 ? undefined : all.slice(from).find(isFree)) ?? all.find(isFree);
    if (spot === undefined) {
      failed.push(wish);
      continue;
    }
    taken.set(wish, spot);
    if (spot.leader !== undefined) leaders.push([spot.leader[0]!, spot.leader[1]!]);
  }
  return { taken, failed };
}

/** A leader may touch the symbol that it names, but runs through no body: neither another symbol nor tank or canister. */
function isCrossed(solid: Box, segment: Segment, of: Box): boolean {
  const isLarge = solid.w > LARGE;
  if (!isLarge && overlaps(solid, grow(of, 2))) return false;
  return segmentCrosses(segment, isLarge ? grow(solid, -3) : solid);
}

/** Nearness to another symbol than its own: a reader would take the label for that one's. */
function beside(box: Box, of: Box, solids: readonly Box[]): number {
  let cost = 0;
  const reach = grow(box, 14);
  for (const solid of solids) {
    if (solid.w > LARGE || overlaps(solid, grow(of, 1))) continue;
    if (overlaps(reach, solid)) cost += 16;
  }
  return cost;
}

/** Whether two segments cross. */
function crosses([a, b]: Segment, [c, d]: Segment): boolean {
  const side = (p: Point, q: Point, r: Point) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** First the label that found no room goes to the front, then other orders are tried. Judgement. */
const TRIES = 90;
const TO_FRONT = 12;

/** Best places are left to others now and then, for one label in three: two labels may each stand in the other's way. */
const skipped = (k: number, i: number): number => {
  const h = Math.imul(k + 1, 0x9e3779b1) ^ Math.imul(i + 1, 0x85ebca6b);
  return (h >>> 5) % 3 === 0 ? (h >>> 8) % SKIP_MOST : 0;
};
const SKIP_MOST = 60;

/** Another order, the same for the same try. */
function shuffled(order: readonly LabelWish[], k: number): LabelWish[] {
  return order
    .map((wish, i) => ({ wish, rank: ((i + 1) * (k + 1) * 0.618_033_988_75) % 1 }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ wish }) => wish);
}

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
  const walls = wallsOf(field);
  const spots: Spots = new Map(wishes.map((wish) => [wish, spotsOf(wish, field, walls)]));
  const must = wishes.filter((w) => w.optional !== true);
  const may = wishes.filter((w) => w.optional === true);
  const score = (failed: readonly LabelWish[]) => failed.reduce((sum, w) => sum + (w.optional === true ? 1 : 100), 0);
  // A label without any place at all will not get one by another order.
  const isHopeless = must.some((w) => spots.get(w)!.length === 0);
  let order = must;
  let best: Try | undefined;
  for (let k = 0; k < (isHopeless ? 1 : TRIES); k++) {
    const result = tryOrder([...order, ...may], spots, (i) => (k < TO_FRONT ? 0 : skipped(k, i)));
    if (best === undefined || score(result.failed) < score(best.failed)) best = result;
    const blocked = result.failed.find((w) => w.optional !== true);
    if (blocked === undefined) break;
    order = k < TO_FRONT && order[0] !== blocked ? [blocked, ...order.filter((w) => w !== blocked)] : shuffled(must, k);
  }
  const labels = [...best!.taken].map(
    ([wish, { box, align, shape, leader }]): Label => ({
      id: wish.id,
      part: wish.part,
      box,
      lines: shape.lines,
      hasState: wish.stateRoom !== undefined,
      faultLines: shape.faultLines,
      align,
      ...(leader === undefined ? {} : { leader }),
    }),
  );
  return { labels, missing: best!.failed.filter((w) => w.optional !== true) };
}
