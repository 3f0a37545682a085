/** What placement makes of a network: everything that is drawn, with its place, as plain data. */
import type { BoundaryId, SpaceId } from '../../../system/network.ts';
import type { LeakPlace } from '../../../system/parameters.ts';
import type { PartId } from '../../../system/parts.ts';
import type { Box, Point } from './geometry.ts';

/** Symbols after ISO 14617 and ISO 1219; the three last are sections of our own. */
export type SymbolKind =
  | 'valve'
  | 'check'
  | 'filter'
  | 'orifice'
  | 'pump'
  | 'jet-pump'
  | 'sensor'
  | 'float-valve'
  | 'rollover'
  | 'flange'
  | 'air'
  | 'source'
  | 'cap'
  | 'flap'
  | 'canister'
  | 'tank';

export interface Figure {
  readonly id: string;
  readonly kind: SymbolKind;
  readonly part: PartId;
  readonly at: Point;
  readonly box: Box;
  /** Quarter turns from left-to-right flow. */
  readonly turn: 0 | 1 | 2 | 3;
  /** Letter in a sensor's circle. */
  readonly letter?: string;
  /** The passage whose state it shows. */
  readonly passage?: string;
  /** The space or boundary whose pressure it shows. */
  readonly space?: SpaceId | BoundaryId;
  /** Drawn with a magnet coil: moved by a command. */
  readonly coil?: boolean;
}

/** A gas line as a section: a wall on either side and gas of one space between. */
export interface Tube {
  readonly space: SpaceId | BoundaryId;
  readonly part: PartId;
  readonly points: readonly Point[];
  readonly bore: number;
}

/** Where the marks of a passage's flow go, in its own direction. */
export interface Way {
  readonly passage: string;
  readonly points: readonly Point[];
}

export interface CellBox extends Box {
  readonly space: SpaceId;
}

export interface Lobe {
  readonly space: SpaceId;
  readonly box: Box;
  /** Inside of the shell, closed. */
  readonly outline: readonly Point[];
  /** Where the large figures stand, and how large they may be. */
  readonly textAt: Point;
  readonly textWidth: number;
}

/** What a label says; the state line is written while it plays and has room kept for its longest words. */
export interface LabelWish {
  readonly id: string;
  readonly part: PartId;
  readonly name: string;
  readonly stateRoom?: string;
  /** Room for what is wrong with the part: its name and its size, on one line or two. */
  readonly faultRoom?: { readonly name: string; readonly size: string };
  readonly of: Box;
  /** Where it is tried first. */
  readonly prefer: 'below' | 'above' | 'right' | 'left';
  /** May be left out where there is no room; the part can still be chosen. */
  readonly optional?: boolean;
}

export interface Label {
  readonly id: string;
  readonly part: PartId;
  readonly box: Box;
  readonly lines: readonly string[];
  readonly hasState: boolean;
  /** Lines that the fault takes. */
  readonly faultLines: 0 | 1 | 2;
  readonly align: 'start' | 'middle' | 'end';
  /** From the label to what it names, where that is not next to it. */
  readonly leader?: readonly Point[];
}

/** A fault shown at its place. */
export interface FaultMark {
  readonly part: PartId;
  readonly at: Point;
  readonly radius: number;
  /** A hole's place, where it is not simply the part. */
  readonly place?: LeakPlace;
}

/** Where something that needs no symbol of its own can be touched. */
export interface TouchArea {
  readonly part: PartId;
  readonly box: Box;
}

export interface Scheme {
  readonly width: number;
  readonly height: number;
  readonly nameSize: number;
  readonly stateSize: number;
  readonly tubes: readonly Tube[];
  readonly figures: readonly Figure[];
  readonly cells: readonly CellBox[];
  readonly headBox: Box;
  readonly lobes: readonly Lobe[];
  readonly ways: readonly Way[];
  /** Thin lines: sensor taps, mechanical links, level arms. */
  readonly thin: readonly { readonly points: readonly Point[]; readonly dashed: boolean }[];
  readonly enclosures: readonly { readonly box: Box; readonly part: PartId }[];
  readonly labels: readonly Label[];
  readonly touch: readonly TouchArea[];
  readonly fault?: FaultMark;
}
