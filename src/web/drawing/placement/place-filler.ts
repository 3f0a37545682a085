import { type Draft, isLeak } from './draft.ts';
import { around, type Box, pt } from './geometry.ts';
import type { TankPlace } from './place-tank.ts';

export interface FillerPlace {
  readonly capAt: { readonly x: number; readonly y: number };
  readonly neckAt: { readonly x: number; readonly y: number };
  readonly hoseAt: { readonly x: number; readonly y: number };
}

/** The filler's pipe from its cap or flap down into the tank. */
export function placeFiller(draft: Draft, tank: TankPlace, capY: number): FillerPlace {
  const { network } = draft;
  const x = tank.neckX;
  const opening = network.passages.find((p) => p.from === network.fillSpace && p.to === 'ambient' && !isLeak(p));
  const closure = opening?.part ?? 'cap';
  draft.tubes.push({
    space: network.fillSpace,
    part: 'fillerNeck',
    points: [pt(x, capY + 10), pt(x, tank.top + 34)],
    bore: draft.s.bore + 5,
  });
  draft.figure(closure === 'cap' ? 'cap' : 'flap', 'filler', closure, pt(x, capY), [38, 26], {
    ...(opening === undefined ? {} : { passage: opening.id }),
    // Room for the cap when it hangs open beside the neck.
    ...(closure === 'cap' ? { box: { x: x - 42, y: capY - 15, w: 61, h: 29 } } : {}),
  });
  // Named at its closed place, not at the room beside it.
  draft.label(closure, around(pt(x, capY), 38, 26), 'above', { stateRoom: draft.words.valveRoom });
  const length = tank.top - capY - 10;
  const neck: Box = { x: x - 16, y: capY + 14, w: 32, h: length * 0.5 };
  const hose: Box = { x: x - 16, y: capY + 14 + length * 0.5, w: 32, h: length * 0.5 - 8 };
  draft.touch.push({ part: 'fillerNeck', box: neck }, { part: 'fillerHose', box: hose });
  if (opening !== undefined) draft.way(opening.id, pt(x, tank.top + 30), pt(x, capY - 24));
  return { capAt: pt(x, capY), neckAt: pt(x, neck.y + neck.h / 2), hoseAt: pt(x, hose.y + hose.h / 2) };
}
