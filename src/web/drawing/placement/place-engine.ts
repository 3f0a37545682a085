import { BOUNDARIES, type BoundaryId, type Passage } from '../../../system/network.ts';
import type { PartId } from '../../../system/parts.ts';
import type { Draft } from './draft.ts';
import { type Box, pt } from './geometry.ts';

const isBoundary = (id: string): id is BoundaryId => (BOUNDARIES as readonly string[]).includes(id);

/** What a boundary of the engine is to a person. */
const BOUNDARY_PART: Readonly<Record<BoundaryId, PartId>> = {
  manifold: 'purgeLine',
  ejector: 'ejector',
  ambient: 'ventFilter',
};

/** Passages from the canister's head to the engine: straight to a boundary, or to a tee with a way to each boundary. */
export function enginePassages(draft: Draft): { readonly first: Passage; readonly branches: readonly Passage[] } {
  for (const first of draft.passages('head')) {
    if (isBoundary(first.to)) return { first, branches: [] };
    const branches = draft.passages(first.to).filter((p) => isBoundary(p.to) && p.to !== 'ambient');
    if (branches.length > 0) return { first, branches };
  }
  throw new Error(
    "the drawing found no way from space 'head' to the engine; expected a passage to manifold or ejector",
  );
}

/** Rows at the top: purge valve, and where its gas goes. Returns the y of the first and of the last row. */
export function placeEngine(
  draft: Draft,
  headX: number,
  headY: number,
): { readonly firstY: number; readonly lastY: number } {
  const { s } = draft;
  const { first, branches } = enginePassages(draft);
  const boxWidth = s.width >= 560 ? 150 : 106;
  const boxLeft = s.width - s.margin - boxWidth;
  const rowY = s.margin + 60 * s.stretch;
  const gap = 92 * s.stretch;
  const valveX = s.margin + s.width * (branches.length > 0 ? 0.24 : 0.34);
  const v = s.valve;

  draft.tube('head', 'purgeLine', pt(headX, headY), pt(headX, rowY), pt(valveX - v, rowY));
  draft.touch.push({ part: 'purgeLine', box: { x: headX - 14, y: rowY - 14, w: 28, h: headY - rowY } });
  draft.label(first.part, draft.valve(first, pt(valveX, rowY)), 'below', { stateRoom: draft.words.pulseRoom });

  const source = (boundary: string, y: number): Box =>
    draft.figure(
      'source',
      boundary,
      BOUNDARY_PART[boundary as BoundaryId],
      pt(boxLeft + boxWidth / 2, y),
      [boxWidth, 48],
      {
        space: boundary,
      },
    );

  if (branches.length === 0) {
    draft.tube(first.to, 'purgeLine', pt(valveX + v, rowY), pt(boxLeft, rowY));
    draft.way(first.id, pt(headX, headY), pt(headX, rowY), pt(boxLeft, rowY));
    source(first.to, rowY);
    return { firstY: rowY, lastY: rowY };
  }

  const teeX = s.margin + s.width * 0.4;
  const checkX = s.margin + s.width * 0.53;
  draft.tube(first.to, 'purgeLine', pt(valveX + v, rowY), pt(teeX, rowY));
  draft.way(first.id, pt(headX, headY), pt(headX, rowY), pt(teeX, rowY));
  branches.forEach((branch, i) => {
    const y = rowY + i * gap;
    draft.tube(first.to, 'purgeLine', pt(teeX, rowY), pt(teeX, y), pt(checkX - v, y));
    draft.tube(branch.to, 'purgeLine', pt(checkX + v, y), pt(boxLeft, y));
    const box = draft.figure('check', branch.id, branch.part, pt(checkX, y), [2 * v, 1.5 * v], { passage: branch.id });
    draft.label(branch.part, box, 'below', { stateRoom: draft.words.valveRoom });
    draft.way(branch.id, pt(teeX, rowY), pt(teeX, y), pt(boxLeft, y));
    source(branch.to, y);
  });
  return { firstY: rowY, lastY: rowY + (branches.length - 1) * gap };
}
