import type { Network, Passage, SpaceId } from '../../../system/network.ts';
import type { LeakPlace } from '../../../system/parameters.ts';
import type { PartId } from '../../../system/parts.ts';
import type { Box, Point, Segment } from './geometry.ts';
import { around, segmentsOf } from './geometry.ts';
import type { CellBox, Figure, LabelWish, Lobe, SymbolKind, TouchArea, Tube, Way } from './scheme.ts';

/** Words that placement needs to keep room for, in the language of the page. */
export interface DrawingWords {
  readonly part: (part: PartId) => string;
  readonly place: (place: LeakPlace) => string;
  /** The longest that a state can say: of a valve, a pressure, the carbon's load. */
  readonly valveRoom: string;
  /** The same for a valve that is driven in pulses. */
  readonly pulseRoom: string;
  readonly pressureRoom: string;
  readonly carbonRoom: string;
  /** Room for flows as numbers, where they are shown without motion; absent = they are not. */
  readonly flowRoom?: string;
  /** What is wrong, and the longest its size can say. */
  readonly fault?: { readonly name: string; readonly room: string };
}

export interface Sizes {
  readonly width: number;
  /** Stretches the rows until all labels have room. */
  readonly stretch: number;
  readonly margin: number;
  readonly bore: number;
  readonly name: number;
  readonly state: number;
  /** Half of a valve's length. */
  readonly valve: number;
}

export function sizesFor(width: number, stretch: number): Sizes {
  const wide = width >= 560;
  return {
    width,
    stretch,
    margin: 10,
    bore: wide ? 9 : 7,
    name: wide ? 16 : 14.5,
    state: wide ? 15 : 14,
    valve: wide ? 17 : 14,
  };
}

/** Everything that the regions of a drawing put down, one after the other. */
export class Draft {
  readonly network: Network;
  readonly words: DrawingWords;
  readonly s: Sizes;
  readonly tubes: Tube[] = [];
  readonly figures: Figure[] = [];
  readonly cells: CellBox[] = [];
  readonly lobes: Lobe[] = [];
  readonly ways: Way[] = [];
  readonly thin: { points: readonly Point[]; dashed: boolean }[] = [];
  readonly enclosures: { box: Box; part: PartId }[] = [];
  readonly wishes: LabelWish[] = [];
  readonly touch: TouchArea[] = [];
  headBox: Box = { x: 0, y: 0, w: 0, h: 0 };

  constructor(network: Network, words: DrawingWords, sizes: Sizes) {
    this.network = network;
    this.words = words;
    this.s = sizes;
  }

  passages(from: SpaceId, part?: PartId): readonly Passage[] {
    return this.network.passages.filter(
      (p) => p.from === from && !isLeak(p) && (part === undefined || p.part === part),
    );
  }

  tube(space: string, part: PartId, ...points: Point[]): void {
    this.tubes.push({ space, part, points, bore: this.s.bore });
  }

  way(passage: string, ...points: Point[]): void {
    this.ways.push({ passage, points });
  }

  line(dashed: boolean, ...points: Point[]): void {
    this.thin.push({ points, dashed });
  }

  figure(
    kind: SymbolKind,
    id: string,
    part: PartId,
    at: Point,
    size: readonly [number, number],
    more: Partial<Figure> = {},
  ): Box {
    const box = more.box ?? around(at, size[0], size[1]);
    this.figures.push({ id, kind, part, at, box, turn: 0, ...more });
    return box;
  }

  /** A valve on a line; its coil stands above it, or beside it on a line that goes up and down. */
  valve(passage: Passage, at: Point, upright = false): Box {
    const { valve: v } = this.s;
    const coil = passage.kind === 'orifice' && passage.actuation !== undefined;
    const lift = coil ? v * 1.9 : 0;
    const box: Box = upright
      ? { x: at.x - v * 0.75, y: at.y - v, w: v * 1.5 + lift, h: 2 * v }
      : { x: at.x - v, y: at.y - v * 0.75 - lift, w: 2 * v, h: v * 1.5 + lift };
    return this.figure('valve', passage.id, passage.part, at, [0, 0], {
      box,
      passage: passage.id,
      coil,
      turn: upright ? 1 : 0,
    });
  }

  label(part: PartId, of: Box, prefer: LabelWish['prefer'], more: Partial<LabelWish> = {}): void {
    const id = more.id ?? part;
    this.wishes.push({ id, part, name: this.words.part(part), of, prefer, ...more });
  }

  /** Lines that no label may touch. */
  lines(): readonly { readonly segment: Segment; readonly width: number }[] {
    const out: { segment: Segment; width: number }[] = [];
    for (const tube of this.tubes)
      for (const segment of segmentsOf(tube.points)) out.push({ segment, width: tube.bore + 4 });
    for (const { points } of this.thin) for (const segment of segmentsOf(points)) out.push({ segment, width: 2 });
    for (const { box: b } of this.enclosures) {
      const corners = [
        { x: b.x, y: b.y },
        { x: b.x + b.w, y: b.y },
        { x: b.x + b.w, y: b.y + b.h },
        { x: b.x, y: b.y + b.h },
        { x: b.x, y: b.y },
      ];
      for (const segment of segmentsOf(corners)) out.push({ segment, width: 2 });
    }
    return out;
  }
}

/** Holes to the open air that only a fault makes; layouts name them `leak.<place>`. */
export const isLeak = (passage: Passage): boolean => passage.id.startsWith('leak.') || passage.kind === 'relief';
