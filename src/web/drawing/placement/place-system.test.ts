import { describe, expect, it } from 'vitest';
import { LAYOUTS } from '../../../system/car.ts';
import { faultKind, faultKindsOf } from '../../../system/faults/catalogue.ts';
import type { Fault } from '../../../system/faults/fault.ts';
import { drawnNetwork } from '../../simulation/play.ts';
import type { DrawnSystem } from '../../simulation/played-run.ts';
import { DRAWING_DE } from '../../text/drawing.de.ts';
import { DRAWING_EN } from '../../text/drawing.en.ts';
import type { DrawingWords } from './draft.ts';
import { type Box, grow, inside, overlaps, type Segment, segmentCrosses, segmentsOf } from './geometry.ts';
import { placeSystem } from './place-system.ts';
import type { Scheme } from './scheme.ts';
import { textWidth } from './text-width.ts';

const LANGUAGES = { en: DRAWING_EN, de: DRAWING_DE };
/** Pages of 390 and 640 px leave 350 and 600 px beside their margins; the ends are the narrowest and widest drawn. */
const WIDTHS = [340, 350, 390, 460, 600, 640, 860];

/** The longest that the size of a fault can say. */
const ROOMS = { m: '12.00 mm', Pa: '−2000 Pa', s: '600 s', K: '−30 K', '1': '100 %', none: '' };

const wordsOf = (language: keyof typeof LANGUAGES, fault?: Fault): DrawingWords => {
  const words = LANGUAGES[language];
  return {
    part: (part) => words.parts[part],
    place: (place) => words.places[place],
    valveRoom: words.valve.room,
    pulseRoom: words.valve.pulseRoom,
    pressureRoom: '−88.88 kPa',
    carbonRoom: words.ofMost('888 g', '888 g'),
    ...(fault === undefined
      ? {}
      : {
          fault: { name: words.faultsShort[fault.kind] ?? '', room: ROOMS[faultKind(fault.kind).size?.unit ?? 'none'] },
        }),
  };
};

const systemOf = (
  layout: (typeof LAYOUTS)[number],
  closure: DrawnSystem['closure'],
  hasRecovery = true,
): DrawnSystem => ({
  layout,
  closure,
  hasRecovery,
});

/** Everything drawn as a line: gas lines as wide as they are, thin lines, leaders, edges of what is drawn as a body. */
function linesOf(scheme: Scheme): Segment[] {
  const edges = (b: Box): readonly Segment[] =>
    segmentsOf([
      { x: b.x, y: b.y },
      { x: b.x + b.w, y: b.y },
      { x: b.x + b.w, y: b.y + b.h },
      { x: b.x, y: b.y + b.h },
      { x: b.x, y: b.y },
    ]);
  return [
    ...scheme.tubes.flatMap((t) => segmentsOf(t.points)),
    ...scheme.thin.flatMap((t) => segmentsOf(t.points)),
    ...scheme.labels.flatMap((l) => (l.leader === undefined ? [] : segmentsOf(l.leader))),
    ...scheme.figures.flatMap((f) => edges(f.box)),
    ...scheme.enclosures.flatMap((e) => edges(e.box)),
    ...scheme.lobes.flatMap((l) => segmentsOf(l.outline)),
  ];
}

function faultsOfLabels(scheme: Scheme): string[] {
  const wrong: string[] = [];
  const lines = linesOf(scheme);
  scheme.labels.forEach((label, i) => {
    if (!inside(label.box, { x: 0, y: 0, w: scheme.width, h: scheme.height }))
      wrong.push(`${label.id} leaves the sheet`);
    for (const other of scheme.labels.slice(i + 1)) {
      if (overlaps(label.box, other.box)) wrong.push(`${label.id} on ${other.id}`);
    }
    if (lines.some((line) => segmentCrosses(line, label.box))) wrong.push(`a line through ${label.id}`);
    const widest = Math.max(...label.lines.map((line) => textWidth(line, scheme.nameSize)));
    if (widest > label.box.w + 0.5) wrong.push(`${label.id} is wider than its box`);
  });
  const bodies = [
    ...scheme.lobes.map((l) => l.box),
    ...scheme.figures.filter((f) => f.kind === 'canister').map((f) => f.box),
  ];
  for (const { id, leader } of scheme.labels) {
    const segments = leader === undefined ? [] : segmentsOf(leader);
    if (bodies.some((b) => segments.some((s) => segmentCrosses(s, grow(b, -4)))))
      wrong.push(`leader of ${id} through a body`);
  }
  return wrong;
}

const MUST_BE_NAMED = ['canister', 'purgeValve', 'fillLimitValve', 'ventFilter', 'tankPressure'];

describe('placement of the drawing', () => {
  for (const layout of LAYOUTS) {
    for (const language of ['en', 'de'] as const) {
      it(`${layout}: no label on another, on a line or off the sheet, and none left out that must be there (${language})`, () => {
        for (const closure of ['capped', 'capless'] as const) {
          // Recovery of refuelling vapour changes sizes, not places.
          const network = drawnNetwork(systemOf(layout, closure, closure === 'capped'), []);
          for (const width of WIDTHS) {
            const scheme = placeSystem(network, wordsOf(language), width);
            const ids = scheme.labels.map((l) => l.id);
            for (const id of MUST_BE_NAMED) expect(ids, `${width} px, ${closure}`).toContain(id);
            expect(ids).toContain(closure === 'capped' ? 'cap' : 'fillerFlap');
            expect(faultsOfLabels(scheme), `${width} px, ${closure}`).toEqual([]);
          }
        }
      });

      it(`${layout}: the same with every fault of the catalogue at every place (${language})`, () => {
        const network = drawnNetwork(systemOf(layout, 'capped'), []);
        // Engine-off cars have the parts of engine-vacuum ones.
        if (layout === 'engine-off') return;
        for (const kind of faultKindsOf(layout)) {
          for (const place of kind.places ?? [undefined]) {
            const fault: Fault = { kind: kind.kind, ...(place === undefined ? {} : { place }) };
            for (const width of language === 'en' && place !== undefined ? [350, 600] : [350]) {
              const scheme = placeSystem(network, wordsOf(language, fault), width, fault);
              const where = `${kind.kind} ${place ?? ''} at ${width} px`;
              expect(faultsOfLabels(scheme), where).toEqual([]);
              expect(
                scheme.labels.filter((l) => l.faultLines > 0),
                where,
              ).toHaveLength(1);
              expect(scheme.fault, where).toBeDefined();
            }
          }
        }
      });
    }

    it(`${layout}: every passage has a way for its marks, every part of the network can be touched`, () => {
      const network = drawnNetwork(systemOf(layout, 'capped'), []);
      const scheme = placeSystem(network, wordsOf('en'), 600);
      const ways = new Set(scheme.ways.map((w) => w.passage));
      expect(network.passages.map((p) => p.id).filter((id) => !ways.has(id))).toEqual([]);
      const drawn = new Set([...scheme.figures.map((f) => f.part), ...scheme.touch.map((t) => t.part), 'carbonBed']);
      const parts = [...network.spaces, ...network.passages, ...network.sensors].map((x) => x.part);
      // A pump module's change-over valve is its vent valve, the hose before it included.
      if (drawn.has('changeoverValve')) drawn.add('ventValve');
      expect([...new Set(parts)].filter((part) => !drawn.has(part))).toEqual([]);
      for (const way of scheme.ways) {
        for (const point of way.points) expect(point.x >= 0 && point.x <= scheme.width, way.passage).toBe(true);
      }
    });

    it(`${layout}: gas lines run straight across or down`, () => {
      const scheme = placeSystem(drawnNetwork(systemOf(layout, 'capped'), []), wordsOf('en'), 390);
      for (const tube of scheme.tubes) {
        for (const [a, b] of segmentsOf(tube.points)) expect(a.x === b.x || a.y === b.y).toBe(true);
      }
    });
  }

  it('tells a label that lies on a line from one that does not', () => {
    const scheme = placeSystem(drawnNetwork(systemOf('engine-vacuum', 'capped'), []), wordsOf('en'), 600);
    const tube = scheme.tubes[0]!.points[0]!;
    const moved = scheme.labels.map((l, i) =>
      i === 0 ? { ...l, box: { ...l.box, x: tube.x - 5, y: tube.y - 20 } } : l,
    );
    expect(faultsOfLabels({ ...scheme, labels: moved })).not.toEqual([]);
  });
});
