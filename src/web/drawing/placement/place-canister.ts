import type { Draft } from './draft.ts';
import { type Box, pt } from './geometry.ts';

/** Where the canister stands; its gas flows from left (ports of tank and engine) to right (fresh air). */
export interface CanisterPlace {
  readonly box: Box;
  readonly headX: number;
  readonly middleY: number;
  readonly ventX: number;
}

export function canisterPlace(draft: Draft, top: number): CanisterPlace {
  const { s } = draft;
  const w = Math.min(Math.max(0.36 * s.width, 118), 230);
  const h = s.width >= 560 ? 132 : 108;
  const box = { x: s.margin, y: top, w, h };
  return { box, headX: box.x + HEAD / 2, middleY: box.y + h / 2, ventX: box.x + w };
}

/** Room at the ports, before the carbon. */
const HEAD = 28;

/** The canister as a section: ports, then the cells of the bed one after the other. */
export function placeCanister(draft: Draft, place: CanisterPlace): void {
  const { network } = draft;
  const { box, headX, middleY, ventX } = place;
  draft.headBox = { x: box.x, y: box.y, w: HEAD, h: box.h };
  const beds = network.spaces.filter((space) => space.kind === 'bed');
  const cellWidth = (box.w - HEAD) / Math.max(1, beds.length);
  beds.forEach((bed, i) => {
    draft.cells.push({ space: bed.id, x: box.x + HEAD + i * cellWidth, y: box.y, w: cellWidth, h: box.h });
  });
  draft.figure('canister', 'canister', 'canister', pt(box.x + box.w / 2, middleY), [box.w, box.h]);
  draft.label('canister', box, 'above', { stateRoom: draft.words.carbonRoom });
  const centre = (id: string) => {
    const cell = draft.cells.find((c) => c.space === id);
    return cell === undefined ? undefined : pt(cell.x + cell.w / 2, middleY);
  };
  for (const passage of network.passages) {
    if (passage.kind !== 'bed') continue;
    const from = centre(passage.from) ?? pt(headX, middleY);
    const to = centre(passage.to) ?? pt(ventX + 14, middleY);
    draft.way(passage.id, from, to);
  }
}
