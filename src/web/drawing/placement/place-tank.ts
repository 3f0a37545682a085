import type { TankSpace } from '../../../system/network.ts';
import type { Draft } from './draft.ts';
import { type Box, type Point, pt } from './geometry.ts';
import type { CanisterPlace } from './place-canister.ts';

export interface TankPlace {
  readonly top: number;
  readonly bottom: number;
  /** Where the filler's pipe comes down. */
  readonly neckX: number;
  readonly senderX: number;
  readonly freeTopX: number;
  readonly lineY: number;
}

/** Rollover valve, fill-limit valve, sensor, sender along the tank's top, as a share of the way. */
const FITTING_AT = [0, 0.2, 0.7, 1] as const;

/** Room on the right for the filler's pipe. */
export const NECK_ROOM = 62;

/** Vapour line, fittings on the tank's top, the tank with its lobes. */
export function placeTank(draft: Draft, canister: CanisterPlace, above: number): TankPlace {
  const { s, network } = draft;
  const lineY = above + 40 * s.stretch;
  const top = lineY + 104 * s.stretch;
  const height = Math.min(Math.max(0.36 * s.width, 160), 232);
  const whole: Box = { x: s.margin, y: top, w: s.width - 2 * s.margin, h: height };
  const neckX = whole.x + whole.w - 30;
  const tanks = network.spaces.filter((space): space is TankSpace => space.kind === 'tank');
  const main = tanks.find((t) => t.id === network.fillSpace) ?? tanks[0]!;
  const passive = tanks.filter((t) => t !== main);
  const mainBox = placeLobes(draft, whole, main, passive);

  // Fittings from left to right, evenly over the lobe that has the filler.
  // Two lobes leave little room on a narrow sheet: fittings then stand as close as they can.
  const first = mainBox.x + (passive.length > 0 ? 24 : 40);
  const last = neckX - (passive.length > 0 && s.width < 560 ? 36 : 52);
  const at = (k: number) => first + (last - first) * (FITTING_AT[k] ?? 0);
  // The rollover valve first: the fill-limit valve's label then has the free top of the tank beside it.
  const fromTank = draft
    .passages(main.id)
    .filter((p) => p.to !== 'ambient' && p.part !== 'crossover')
    .sort((a, b) => Number(b.part === 'rolloverValve') - Number(a.part === 'rolloverValve'));
  const lineSpace = fromTank[0]?.to ?? 'vapourLine';
  const drops = fromTank.map((_, i) => at(i));
  const { headX, middleY, box } = canister;
  const onLine = draft.passages(lineSpace)[0];

  if (onLine !== undefined) {
    const isolated = onLine.kind === 'orifice' && onLine.actuation !== undefined;
    const below = box.y + box.h;
    const valveY = below + 30 * s.stretch;
    const valveEnd = isolated ? valveY + s.valve : below;
    if (isolated) {
      draft.tube('head', 'vapourLine', pt(headX, below), pt(headX, valveY - s.valve));
      const symbol = draft.valve(onLine, pt(headX, valveY), true);
      draft.label(onLine.part, symbol, 'right', {
        stateRoom: draft.words.valveRoom,
      });
    }
    const y = isolated ? lineY + 40 * s.stretch : lineY;
    for (const [i, x] of drops.entries()) {
      draft.tube(lineSpace, 'vapourLine', pt(headX, valveEnd), pt(headX, y), pt(x, y), pt(x, top));
      draft.way(fromTank[i]!.id, pt(x, top + 8), pt(x, y), pt(headX, y));
    }
    draft.way(onLine.id, pt(headX, y), pt(headX, middleY));
    draft.touch.push({
      part: 'vapourLine',
      box: { x: headX, y: y - 14, w: Math.max(28, (drops[0] ?? headX) - headX), h: 28 },
    });
  }
  // Large figures stand clear of the cages in the gas and of the filler's end.
  const clearLeft = Math.max(mainBox.x, ...drops.map((x) => x + 16));
  const textX = (clearLeft + neckX - 16) / 2;
  const mainLobe = draft.lobes.findIndex((l) => l.space === main.id);
  draft.lobes[mainLobe] = { ...draft.lobes[mainLobe]!, textAt: pt(textX, top), textWidth: neckX - 16 - clearLeft };
  fromTank.forEach((passage, i) => {
    const x = drops[i]!;
    const boss: Box = { x: x - 13, y: top - 12, w: 26, h: 12 };
    draft.figure(
      passage.part === 'rolloverValve' ? 'rollover' : 'float-valve',
      passage.id,
      passage.part,
      pt(x, top),
      [0, 0],
      {
        box: { ...boss, h: 46 },
        passage: passage.id,
        space: main.id,
      },
    );
    draft.label(passage.part, boss, 'right', {
      ...(passage.part === 'rolloverValve' ? { optional: true } : { stateRoom: draft.words.valveRoom }),
    });
  });

  const sensorX = at(2);
  for (const sensor of network.sensors.filter((x) => x.space === main.id)) {
    draft.line(false, pt(sensorX, top), pt(sensorX, top - 16));
    const symbol = draft.figure('sensor', sensor.id, sensor.part, pt(sensorX, top - 30), [28, 28], {
      letter: 'P',
      space: main.id,
    });
    draft.label(sensor.part, symbol, 'above', { id: sensor.id, stateRoom: draft.words.pressureRoom });
  }
  const senderX = at(3);
  const flange = draft.figure('flange', 'senderSeal', 'senderSeal', pt(senderX, top - 3), [40, 8]);
  draft.line(false, pt(senderX, top - 7), pt(senderX, top - 16));
  draft.figure('sensor', 'levelSender', 'levelSender', pt(senderX, top - 30), [28, 28], {
    letter: 'L',
    space: main.id,
  });
  draft.label('senderSeal', { ...flange, y: flange.y - 38, h: flange.h + 38 }, 'above', { optional: true });
  // Below the tank, where its name has room.
  const probe = pt(neckX - 30, top + height + 28);
  draft.line(false, pt(probe.x, top + height), pt(probe.x, probe.y - 14));
  const temperature = draft.figure('sensor', 'temperatureSensor', 'temperatureSensor', probe, [28, 28], {
    letter: 'T',
  });
  draft.label('temperatureSensor', temperature, 'left', { optional: true });
  return { top, bottom: top + height + 44, neckX, senderX, freeTopX: (at(1) + at(2)) / 2, lineY };
}

/** One lobe, or two beside each other over a tunnel with a weir between. */
function placeLobes(draft: Draft, whole: Box, main: TankSpace, passive: readonly TankSpace[]): Box {
  const { network, s } = draft;
  const other = passive[0];
  const { x, y, w, h } = whole;
  if (other === undefined) {
    draft.figure('tank', main.id, 'tankShell', pt(x + w / 2, y + h / 2), [w, h], { space: main.id });
    draft.lobes.push({
      space: main.id,
      box: whole,
      outline: [pt(x, y), pt(x + w, y), pt(x + w, y + h), pt(x, y + h)],
      textAt: pt(x + w * 0.5, y + h * 0.5),
      textWidth: w * 0.7,
    });
    return whole;
  }
  const weir = network.weirs.find((q) => q.between.includes(main.id))?.heightFraction ?? 0.5;
  const crest = y + h * (1 - weir);
  const share = s.width >= 560 ? 0.34 : 0.3;
  const splitX = x + w * share;
  const slope = 20;
  // The lobes meet over the crest in a gap that fuel can run through.
  const lip = Math.max(y + 20, crest - 12);
  const left: Point[] = [
    pt(x, y),
    pt(splitX - slope, y),
    pt(splitX - 4, lip),
    pt(splitX, lip),
    pt(splitX, crest),
    pt(splitX - 4, crest),
    pt(splitX - slope, y + h),
    pt(x, y + h),
  ];
  const right: Point[] = [
    pt(splitX + slope, y),
    pt(x + w, y),
    pt(x + w, y + h),
    pt(splitX + slope, y + h),
    pt(splitX + 4, crest),
    pt(splitX, crest),
    pt(splitX, lip),
    pt(splitX + 4, lip),
  ];
  const leftBox = { x, y, w: w * share, h };
  const rightBox = { x: splitX, y, w: w * (1 - share), h };
  draft.figure('tank', other.id, 'tankShell', pt(x + leftBox.w / 2, y + h / 2), [leftBox.w, h], { space: other.id });
  draft.figure('tank', main.id, 'tankShell', pt(splitX + rightBox.w / 2, y + h / 2), [rightBox.w, h], {
    space: main.id,
  });
  draft.lobes.push({
    space: other.id,
    box: leftBox,
    outline: left,
    textAt: pt(x + (leftBox.w - slope) / 2, y + h * 0.5),
    textWidth: leftBox.w - 2 * slope,
  });
  draft.lobes.push({
    space: main.id,
    box: rightBox,
    outline: right,
    textAt: pt(splitX + slope + (rightBox.w - slope) / 2, y + h * 0.5),
    textWidth: rightBox.w - 3 * slope,
  });
  for (const passage of network.passages) {
    if (passage.part !== 'crossover') continue;
    const archY = y - 22;
    const a = splitX - slope - 16;
    const b = splitX + slope + 8;
    draft.tube(passage.from, 'crossover', pt(a, y), pt(a, archY), pt(splitX, archY));
    draft.tube(passage.to, 'crossover', pt(splitX, archY), pt(b, archY), pt(b, y));
    draft.way(passage.id, pt(a, y + 10), pt(a, archY), pt(b, archY), pt(b, y + 10));
    const area: Box = { x: a - 8, y: archY - 10, w: b - a + 16, h: 20 };
    draft.touch.push({ part: 'crossover', box: area });
    draft.label('crossover', area, 'above', { optional: true });
  }
  for (const pump of network.transferPumps) {
    const from = draft.lobes.find((l) => l.space === pump.from)!.box;
    const to = draft.lobes.find((l) => l.space === pump.to)!.box;
    const base = y + h - 16;
    const over = crest - 6;
    const a = from.x + from.w - slope - 14;
    const b = to.x + slope + 16;
    draft.figure('jet-pump', 'transferPump', 'transferPump', pt(a, base - 8), [24, 24], { turn: 3 });
    draft.line(true, pt(a, base - 20), pt(a, over), pt(b, over), pt(b, base));
    const passiveText = draft.lobes.findIndex((l) => l.space === pump.from);
    const free = a - 14 - from.x;
    draft.lobes[passiveText] = {
      ...draft.lobes[passiveText]!,
      textAt: pt(from.x + free / 2, y),
      textWidth: free,
    };
  }
  return { x: splitX + slope, y, w: rightBox.w - slope, h };
}
