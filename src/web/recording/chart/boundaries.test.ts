import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { moveBoundary, type PhaseRow, remove, split } from './boundaries.ts';

const row: PhaseRow = [
  { kind: 'baseline', fromS: 0, toS: 10 },
  { kind: 'draw', fromS: 10, toS: 24 },
  { kind: 'hold', fromS: 24, toS: 90 },
];

/** No gap, no overlap, the same ends. */
function expectCover(phases: PhaseRow): void {
  expect(phases[0]!.fromS).toBe(0);
  expect(phases.at(-1)!.toS).toBe(90);
  for (let k = 1; k < phases.length; k++) expect(phases[k]!.fromS).toBe(phases[k - 1]!.toS);
  for (const { fromS, toS } of phases) expect(toS).toBeGreaterThan(fromS);
}

describe('phases corrected by hand', () => {
  test.prop([
    fc.array(
      fc.oneof(
        fc.record({
          what: fc.constant('move' as const),
          at: fc.nat(9),
          toS: fc.double({ min: -50, max: 150, noNaN: true }),
        }),
        fc.record({ what: fc.constant('split' as const), at: fc.nat(9) }),
        fc.record({ what: fc.constant('remove' as const), at: fc.nat(9) }),
      ),
      { maxLength: 12 },
    ),
  ])('cover the recording whatever is done to them', (acts) => {
    let phases = row;
    for (const act of acts) {
      const at = act.at % phases.length;
      if (act.what === 'move' && phases.length > 1)
        phases = moveBoundary(phases, act.at % (phases.length - 1), act.toS, 0.1);
      if (act.what === 'split' && phases[at]!.toS - phases[at]!.fromS > 1) phases = split(phases, at);
      if (act.what === 'remove') phases = remove(phases, at);
      expectCover(phases);
    }
  });

  it('moves one boundary only', () => {
    const moved = moveBoundary(row, 1, 30, 0.1);
    expect(moved.map(({ toS }) => toS)).toEqual([10, 30, 90]);
    expect(moveBoundary(row, 1, 2, 0.5)[1]!.toS).toBe(10.5);
  });
});
