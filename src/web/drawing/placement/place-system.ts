import type { Fault } from '../../../system/faults/fault.ts';
import type { Network } from '../../../system/network.ts';
import type { LeakPlace } from '../../../system/parameters.ts';
import { arrowOf, toldPassages } from './arrows.ts';
import { Draft, type DrawingWords, sizesFor } from './draft.ts';
import { faultPlace, placeHoles } from './fault-places.ts';
import { around, type Box, grow } from './geometry.ts';
import { canisterPlace, placeCanister } from './place-canister.ts';
import { placeEngine } from './place-engine.ts';
import { placeFiller } from './place-filler.ts';
import { placeLabels } from './place-labels.ts';
import { NECK_ROOM, placeTank } from './place-tank.ts';
import { placeVent } from './place-vent.ts';
import type { LabelWish, Scheme } from './scheme.ts';

/** How far rows are pulled apart, at most, to make room for labels. */
const STRETCHES = [1, 1.12, 1.25, 1.4, 1.6, 1.85, 2.1] as const;

/**
 * Places a network on a sheet: engine at the top, canister with its fresh-air side in the middle, filler on the right, tank
 * below. Everything comes from the network's own spaces and passages; there is no picture of any layout.
 *
 * @param network spaces, passages and sensors of the car
 * @param words names in the language of the page
 * @param width room across, px
 * @param fault what is marked as wrong
 * @returns everything that is drawn, with its place
 */
export function placeSystem(network: Network, words: DrawingWords, width: number, fault?: Fault): Scheme {
  let scheme: Scheme | undefined;
  for (const stretch of STRETCHES) {
    const tried = place(network, words, width, stretch, fault);
    scheme ??= tried.scheme;
    if (tried.missing === 0) return tried.scheme;
    scheme = tried.scheme;
  }
  return scheme!;
}

/** Places of holes that are the part with their name; other holes sit beside it, in a hose or line. */
const SAME_AS_PART: ReadonlySet<LeakPlace> = new Set(['cap', 'canister', 'senderSeal']);

const withoutOptional = ({ optional: _, ...wish }: LabelWish): LabelWish => wish;

function place(
  network: Network,
  words: DrawingWords,
  width: number,
  stretch: number,
  fault: Fault | undefined,
): { readonly scheme: Scheme; readonly missing: number } {
  const draft = new Draft(network, words, sizesFor(width, stretch));
  const { s } = draft;
  // The engine's rows come first, but their purge line starts at the canister, whose place follows from theirs.
  const branches = network.spaces.some((space) => space.id === 'tee') ? 1 : 0;
  const engineBottom = s.margin + (60 + 92 * branches) * stretch;
  const canister = canisterPlace(draft, engineBottom + 74 * stretch);
  placeEngine(draft, canister.headX, canister.box.y);
  placeCanister(draft, canister);
  const ventBottom = placeVent(draft, canister, width - s.margin - NECK_ROOM);
  const tank = placeTank(draft, canister, Math.max(ventBottom, canister.box.y + canister.box.h));
  const filler = placeFiller(draft, tank, canister.box.y + 22);
  placeHoles(draft, canister, tank, filler);

  const mark = fault === undefined ? undefined : faultPlace(draft, fault, canister, tank, filler);
  const wishes: LabelWish[] = [...draft.wishes];
  const solids: Box[] = draft.figures.filter((f) => f.kind !== 'tank').map((f) => f.box);
  for (const lobe of draft.lobes) solids.push(lobe.box);
  if (mark !== undefined) {
    const of = around(mark.at, 2 * mark.radius, 2 * mark.radius);
    if (
      !solids.some(
        (b) => b.w > 60 && mark.at.x > b.x && mark.at.x < b.x + b.w && mark.at.y > b.y && mark.at.y < b.y + b.h,
      )
    ) {
      solids.push(grow(of, -2));
    }
    const faultRoom = { name: words.fault?.name ?? '', size: words.fault?.room ?? '' };
    const isOwn = mark.place === undefined || SAME_AS_PART.has(mark.place);
    const own = isOwn ? wishes.findIndex((w) => w.part === mark.part && w.name !== '') : -1;
    const name = mark.place === undefined || isOwn ? words.part(mark.part) : words.place(mark.place);
    // Beside the name of its part; a part without a name on the drawing gets a label for the fault alone.
    if (own >= 0) wishes[own] = { ...withoutOptional(wishes[own]!), faultRoom };
    else wishes.push({ id: 'fault', part: mark.part, name, faultRoom, of, prefer: 'left' });
  }
  if (words.flowRoom !== undefined) {
    const told = toldPassages(mark?.place).flatMap(
      (passage) => draft.ways.find((way) => way.passage === passage) ?? [],
    );
    wishes.unshift(
      ...told.map(
        ({ passage, points }): LabelWish => ({
          id: `flow.${passage}`,
          part: 'vapourLine',
          name: '',
          stateRoom: words.flowRoom ?? '',
          of: around(arrowOf(points), 16, 16),
          prefer: 'right',
          optional: true,
        }),
      ),
    );
  }
  const height = Math.ceil(tank.bottom + s.margin);
  const { labels, missing } = placeLabels(wishes, {
    bounds: { x: 2, y: 2, w: width - 4, h: height - 4 },
    solids,
    lines: draft.lines(),
    nameSize: s.name,
    stateSize: s.state,
  });
  return {
    missing: missing.length,
    scheme: {
      width,
      height,
      nameSize: s.name,
      stateSize: s.state,
      tubes: draft.tubes,
      figures: draft.figures,
      cells: draft.cells,
      headBox: draft.headBox,
      lobes: draft.lobes,
      ways: draft.ways,
      thin: draft.thin,
      enclosures: draft.enclosures,
      labels,
      touch: draft.touch,
      ...(mark === undefined ? {} : { fault: mark }),
    },
  };
}
