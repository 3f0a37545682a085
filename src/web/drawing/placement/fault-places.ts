import { faultKind } from '../../../system/faults/catalogue.ts';
import type { Fault } from '../../../system/faults/fault.ts';
import type { LeakPlace } from '../../../system/parameters.ts';
import type { PartId } from '../../../system/parts.ts';
import type { Draft } from './draft.ts';
import { type Point, pt } from './geometry.ts';
import type { CanisterPlace } from './place-canister.ts';
import type { FillerPlace } from './place-filler.ts';
import type { TankPlace } from './place-tank.ts';
import type { FaultMark } from './scheme.ts';

const OUT = 24;

/** Where a hole sits, and which way the open air lies. */
function holeAt(
  place: LeakPlace,
  canister: CanisterPlace,
  tank: TankPlace,
  filler: FillerPlace,
  draft: Draft,
): { readonly at: Point; readonly way: readonly Point[] } {
  const { box, headX, middleY, ventX } = canister;
  const mouth = pt(tank.neckX, tank.top + 30);
  const out = (at: Point, dx: number, dy: number, ...before: Point[]) => ({
    at,
    way: [...before, at, pt(at.x + dx, at.y + dy)],
  });
  switch (place) {
    case 'cap':
      return out(pt(filler.capAt.x, filler.capAt.y), 20, -20, mouth);
    case 'neck':
      return out(pt(filler.neckAt.x, filler.neckAt.y), OUT, 0, mouth);
    case 'fillerHose':
      return out(pt(filler.hoseAt.x, filler.hoseAt.y), OUT, 0, mouth);
    case 'senderSeal':
      return out(pt(tank.senderX + 16, tank.top - 3), 16, -18, pt(tank.senderX + 16, tank.top + 16));
    case 'tankTop':
      return out(pt(tank.freeTopX, tank.top), 0, -OUT, pt(tank.freeTopX, tank.top + 16));
    case 'vapourLine': {
      const at = pt(headX + 26, draft.touch.find((t) => t.part === 'vapourLine')!.box.y + 14);
      return out(at, 0, OUT);
    }
    case 'canister': {
      const cell = draft.cells[Math.ceil(draft.cells.length / 2) - 1]!;
      return out(pt(cell.x + cell.w / 2, box.y + box.h), 0, OUT, pt(cell.x + cell.w / 2, middleY));
    }
    case 'ventSide': {
      const y = draft.tubes.find((t) => t.space === 'ventSide')!.points[0]!.y;
      return out(pt(ventX + 13, y), 0, OUT);
    }
    case 'purgeLine': {
      const line = draft.tubes.find((t) => t.space === 'head' && t.part === 'purgeLine')!.points;
      const at = pt(headX, (line[0]!.y + line[1]!.y) / 2);
      return out(at, OUT, 0, pt(headX, middleY));
    }
  }
}

/** The way of every hole to the open air, and of the relief in the cap. */
export function placeHoles(draft: Draft, canister: CanisterPlace, tank: TankPlace, filler: FillerPlace): void {
  for (const passage of draft.network.passages) {
    if (passage.kind === 'relief') draft.way(passage.id, ...holeAt('cap', canister, tank, filler, draft).way);
    if (!passage.id.startsWith('leak.')) continue;
    const place = passage.id.slice('leak.'.length) as LeakPlace;
    draft.way(passage.id, ...holeAt(place, canister, tank, filler, draft).way);
  }
}

/** Parts whose faults are shown at another part's symbol. */
const SHOWN_AT: Readonly<Partial<Record<PartId, PartId>>> = {
  carbonBed: 'canister',
  fillerFlap: 'cap',
  // A pump module's change-over valve is its vent valve.
  ventValve: 'changeoverValve',
};

/** Where a fault is marked: at its hole, or at the part that is in a wrong state. */
export function faultPlace(
  draft: Draft,
  fault: Fault,
  canister: CanisterPlace,
  tank: TankPlace,
  filler: FillerPlace,
): FaultMark {
  const kind = faultKind(fault.kind);
  const place =
    fault.place ??
    kind.places?.[0] ??
    (kind.kind === 'cap-missing' ? 'cap' : kind.kind === 'canister-cracked' ? 'canister' : undefined);
  if (place !== undefined) {
    const passage = draft.network.passages.find((p) => p.id === `leak.${place}`);
    return { at: holeAt(place, canister, tank, filler, draft).at, part: passage?.part ?? kind.part, radius: 20, place };
  }
  const part = draft.figures.some((f) => f.part === kind.part) ? kind.part : (SHOWN_AT[kind.part] ?? kind.part);
  const figure = draft.figures.find((f) => f.part === part);
  if (figure !== undefined && figure.kind !== 'canister') {
    return { at: figure.at, part, radius: Math.max(24, Math.min(figure.box.w, figure.box.h) / 2 + 10) };
  }
  const cell = draft.cells.find((c) => part === 'canister' && c !== undefined);
  if (cell !== undefined) return { at: pt(cell.x + cell.w / 2, cell.y + cell.h / 2), part, radius: 26 };
  const area = draft.touch.find((t) => t.part === part)?.box ?? canister.box;
  return { at: pt(area.x + area.w / 2, area.y + area.h / 2), part, radius: 20 };
}
