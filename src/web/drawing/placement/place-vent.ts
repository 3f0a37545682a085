import type { Passage } from '../../../system/network.ts';
import type { Draft } from './draft.ts';
import { type Box, pt } from './geometry.ts';
import type { CanisterPlace } from './place-canister.ts';

/** Fresh-air side of the canister. Returns how far down it reaches. */
export function placeVent(draft: Draft, canister: CanisterPlace, right: number): number {
  const ways = draft.passages('ventSide').filter((p) => p.kind !== 'bed');
  const toAir = ways.find((p) => p.to === 'ambient');
  if (toAir === undefined) throw new Error("the drawing found no way from space 'ventSide' to ambient");
  const others = ways.filter((p) => p.to !== 'ambient');
  return others.length === 0
    ? ventValve(draft, canister, toAir, right)
    : pumpModule(draft, canister, toAir, others, right);
}

function ventValve(draft: Draft, canister: CanisterPlace, toAir: Passage, right: number): number {
  const { s } = draft;
  const { ventX, middleY: y } = canister;
  const room = right - ventX;
  const valveX = ventX + Math.max(s.valve + 22, room * 0.3);
  const filterX = ventX + Math.max(2 * s.valve + 64, room * 0.62);
  const endX = Math.min(right - 8, filterX + 34);
  draft.tube('ventSide', toAir.part, pt(ventX, y), pt(valveX - s.valve, y));
  draft.tube('ambient', toAir.part, pt(valveX + s.valve, y), pt(endX, y));
  draft.way(toAir.id, pt(ventX + 14, y), pt(endX, y));
  draft.label(toAir.part, draft.valve(toAir, pt(valveX, y)), 'below', { stateRoom: draft.words.valveRoom });
  placeFilter(draft, pt(filterX, y), 0);
  draft.figure('air', 'air', 'ventFilter', pt(endX + 5, y), [12, 16]);
  return canister.box.y + canister.box.h;
}

function placeFilter(draft: Draft, at: { x: number; y: number }, turn: 0 | 1): void {
  const box = draft.figure('filter', 'ventFilter', 'ventFilter', at, [24, 24], { turn });
  draft.label('ventFilter', box, turn === 0 ? 'above' : 'left');
}

/** Pump, change-over valve and reference orifice in one housing that stands in for the vent valve. */
function pumpModule(
  draft: Draft,
  canister: CanisterPlace,
  toAir: Passage,
  others: readonly Passage[],
  right: number,
): number {
  const { s, network } = draft;
  const { ventX, box } = canister;
  const v = s.valve;
  const x0 = ventX + 20;
  const room = right - x0;
  const joinX = x0 + 16;
  const valveX = joinX + Math.max(v + 14, room * 0.2);
  const spaceX = valveX + v + Math.max(12, room * 0.14);
  const pumpX = spaceX + Math.max(32, room * 0.16);
  const ventY = box.y + 66;
  const space = others[0]!.to;
  const rows = others.map((_, i) => ventY + (i + 1) * 72 * s.stretch);
  const lastY = rows.at(-1)!;

  draft.tube('ventSide', toAir.part, pt(ventX, ventY), pt(valveX - v, ventY));
  draft.tube('ambient', toAir.part, pt(valveX + v, ventY), pt(pumpX, ventY), pt(pumpX, box.y - 18));
  draft.way(toAir.id, pt(ventX + 14, ventY), pt(pumpX, ventY), pt(pumpX, box.y - 18));
  draft.valve(toAir, pt(valveX, ventY));
  draft.touch.push({ part: toAir.part, box: { x: ventX, y: ventY - 12, w: joinX - ventX, h: 24 } });
  const top: Box = { x: x0, y: ventY - 44, w: pumpX + 24 - x0, h: 0 };

  others.forEach((passage, i) => {
    const y = rows[i]!;
    draft.tube('ventSide', passage.part, pt(joinX, ventY), pt(joinX, y), pt(valveX - v, y));
    draft.tube(space, passage.part, pt(valveX + v, y), pt(spaceX, y), pt(spaceX, lastY));
    // Only one of them carries the marks of the common beginning, or they would lie on each other.
    const begin = i === 0 ? [pt(ventX + 14, ventY)] : [];
    draft.way(passage.id, ...begin, pt(joinX, ventY), pt(joinX, y), pt(spaceX, y), pt(spaceX, lastY));
    if (passage.part === toAir.part) {
      // One valve with two ways: the upper has the coil, a dashed link says that they move together.
      const body: Box = { x: valveX - v, y: y - v * 0.75, w: 2 * v, h: v * 1.5 };
      draft.figure('valve', passage.id, passage.part, pt(valveX, y), [0, 0], { box: body, passage: passage.id });
      draft.line(true, pt(valveX, ventY + v * 0.75), pt(valveX, y - v * 0.75));
      draft.label(passage.part, body, 'below', { stateRoom: draft.words.valveRoom });
    } else {
      const orifice = draft.figure('orifice', passage.id, passage.part, pt(valveX, y), [2 * v, 22], {
        passage: passage.id,
      });
      draft.label(passage.part, orifice, 'below');
    }
  });

  let bottom = lastY + 26;
  const pump = network.passages.find((p) => p.kind === 'pump' && p.from === space);
  if (pump !== undefined) {
    draft.tube(space, pump.part, pt(spaceX, lastY), pt(pumpX, lastY));
    draft.tube('ambient', pump.part, pt(pumpX, lastY), pt(pumpX, ventY));
    draft.way(pump.id, pt(spaceX, lastY), pt(pumpX, lastY), pt(pumpX, box.y - 18));
    const symbol = draft.figure('pump', pump.id, pump.part, pt(pumpX, lastY), [30, 30], { passage: pump.id, turn: 3 });
    draft.label(pump.part, symbol, 'below', { stateRoom: draft.words.valveRoom });
  }
  for (const sensor of network.sensors.filter((x) => x.space === space)) {
    const at = pt(spaceX, lastY + 46);
    draft.line(false, pt(spaceX, lastY), pt(spaceX, at.y - 14));
    const symbol = draft.figure('sensor', sensor.id, sensor.part, at, [28, 28], { letter: 'P', space });
    draft.label(sensor.part, symbol, 'below', { id: sensor.id, stateRoom: draft.words.pressureRoom });
    bottom = at.y + 24;
  }
  draft.enclosures.push({ part: 'pumpModule', box: { ...top, h: bottom - top.y } });
  placeFilter(draft, pt(pumpX, box.y - 4), 1);
  draft.figure('air', 'air', 'ventFilter', pt(pumpX, box.y - 24), [16, 12], { turn: 3 });
  return bottom;
}
