/** Points, boxes and polylines of a drawing, in CSS pixels; y grows downwards. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export type Segment = readonly [Point, Point];

export const pt = (x: number, y: number): Point => ({ x, y });

export const around = (at: Point, w: number, h: number): Box => ({ x: at.x - w / 2, y: at.y - h / 2, w, h });

export const grow = (box: Box, by: number): Box => ({
  x: box.x - by,
  y: box.y - by,
  w: box.w + 2 * by,
  h: box.h + 2 * by,
});

export const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;

export const inside = (inner: Box, outer: Box): boolean =>
  inner.x >= outer.x &&
  inner.y >= outer.y &&
  inner.x + inner.w <= outer.x + outer.w &&
  inner.y + inner.h <= outer.y + outer.h;

/** Whether a segment has any point inside a box (Liang and Barsky's clipping, 1984). */
export function segmentCrosses([a, b]: Segment, box: Box): boolean {
  const d = pt(b.x - a.x, b.y - a.y);
  let low = 0;
  let high = 1;
  for (const [p, q] of [
    [-d.x, a.x - box.x],
    [d.x, box.x + box.w - a.x],
    [-d.y, a.y - box.y],
    [d.y, box.y + box.h - a.y],
  ] as const) {
    if (p === 0) {
      if (q <= 0) return false;
    } else if (p < 0) low = Math.max(low, q / p);
    else high = Math.min(high, q / p);
  }
  return low < high;
}

export function segmentsOf(points: readonly Point[]): readonly Segment[] {
  const out: Segment[] = [];
  for (let i = 1; i < points.length; i++) out.push([points[i - 1]!, points[i]!]);
  return out;
}

export const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

export const lengthOf = (points: readonly Point[]): number =>
  segmentsOf(points).reduce((sum, [a, b]) => sum + distance(a, b), 0);

/** The point of a polyline at a length along it, with the direction there; ends are held. */
export function pointAlong(points: readonly Point[], along: number): Point & { readonly angle: number } {
  let left = Math.max(0, along);
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!;
    const b = points[i]!;
    const length = distance(a, b);
    if (left <= length || i === points.length - 1) {
      const share = length === 0 ? 0 : Math.min(1, left / length);
      return {
        x: a.x + share * (b.x - a.x),
        y: a.y + share * (b.y - a.y),
        angle: Math.atan2(b.y - a.y, b.x - a.x),
      };
    }
    left -= length;
  }
  return { ...points[0]!, angle: 0 };
}

/** The point of a box's edge that is nearest to `to`. */
export const nearestOf = (box: Box, to: Point): Point =>
  pt(Math.min(Math.max(to.x, box.x), box.x + box.w), Math.min(Math.max(to.y, box.y), box.y + box.h));

/** A polyline as SVG path data with corners rounded. */
export function roundedPath(points: readonly Point[], radius: number): string {
  const n = (v: number) => v.toFixed(1);
  let d = `M${n(points[0]!.x)} ${n(points[0]!.y)}`;
  for (let i = 1; i < points.length; i++) {
    const here = points[i]!;
    const next = points[i + 1];
    if (next === undefined) d += `L${n(here.x)} ${n(here.y)}`;
    else {
      const before = points[i - 1]!;
      const r = Math.min(radius, distance(before, here) / 2, distance(here, next) / 2);
      const inX = here.x + ((before.x - here.x) / (distance(before, here) || 1)) * r;
      const inY = here.y + ((before.y - here.y) / (distance(before, here) || 1)) * r;
      const outX = here.x + ((next.x - here.x) / (distance(here, next) || 1)) * r;
      const outY = here.y + ((next.y - here.y) / (distance(here, next) || 1)) * r;
      d += `L${n(inX)} ${n(inY)}Q${n(here.x)} ${n(here.y)} ${n(outX)} ${n(outY)}`;
    }
  }
  return d;
}
