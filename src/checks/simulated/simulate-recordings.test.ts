/** Recordings that could be made: what the simulator says they would tell apart. */
import { beforeAll, describe, expect, test } from 'vitest';
import { type JobState, NEW_JOB } from '../job-state.ts';
import { plan } from '../plan.ts';
import type { RootCauseId } from '../root-causes.ts';
import { expectedBits, type SimulatedRecording, simulateRecordings } from './simulate-recordings.ts';

const likely = (...ids: RootCauseId[]) => ids.map((id) => ({ id, probability: 1 / ids.length }));
const SIZE = { median: 0.7, lo90: 0.6, hi90: 0.8 };

describe('leaks of known size at the tank and at the canister', () => {
  let recordings: SimulatedRecording[];
  const causes = likely('F10', 'F07');
  beforeAll(() => {
    recordings = [...simulateRecordings({ layout: 'engine-vacuum', causes, diameterMm: SIZE })];
  });
  const bits = (id: string) => expectedBits(recordings.find((r) => r.id === id)!, causes);

  test('chances of outcomes sum to 1', () => {
    expect(recordings.map(({ id }) => id)).toEqual(['R01', 'R02', 'R03', 'R04']);
    for (const { chances } of recordings) {
      for (const own of Object.values(chances)) expect(own.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    }
  });

  test('only a clamp at the vapour line tells them apart', () => {
    expect(bits('R04')).toBeGreaterThan(0.9);
    for (const id of ['R01', 'R02', 'R03']) expect(bits(id)).toBeLessThan(0.3);
  });

  test('where nothing else is at hand the plan takes it', () => {
    const job: JobState = {
      ...NEW_JOB,
      finding: {
        causes: [{ id: 'leak', probability: 1, places: [{ group: ['tank top', 'canister'], probability: 1 }] }],
      },
      leftOut: Array.from({ length: 36 }, (_, i) => `T${String(i + 1).padStart(2, '0')}`),
      recordings,
      changes: { 'shop.unproven': 3000 },
    };
    expect(plan(job, { expansions: 60 }).next.id).toBe('R04');
  });
});

test('nothing is expected of a recording when the cause is known', () => {
  const causes = [{ id: 'F10', probability: 1 } as const];
  for (const recording of simulateRecordings({ layout: 'engine-vacuum', causes, diameterMm: SIZE })) {
    expect(expectedBits(recording, causes)).toBeCloseTo(0, 9);
  }
});

test.each(['saddle-tank', 'two-path-purge', 'engine-off'] as const)('%s is drawn down like the rest', (layout) => {
  const causes = likely('F10', 'F14');
  const recordings = [...simulateRecordings({ layout, causes, diameterMm: SIZE })];
  expect(recordings).toHaveLength(4);
  // a leak falls after the draw, a sensor that is wrong does not
  for (const recording of recordings) expect(expectedBits(recording, causes)).toBeGreaterThan(0.5);
});

test('layouts without a draw have none', () => {
  expect([...simulateRecordings({ layout: 'pump-reference', causes: likely('F10') })]).toEqual([]);
});
