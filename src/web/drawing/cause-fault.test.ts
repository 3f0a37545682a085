import { expect, it } from 'vitest';
import { CAUSES, type CauseProbability } from '../../diagnosis/finding.ts';
import { LAYOUTS } from '../../system/car.ts';
import { drawnNetwork } from '../simulation/play.ts';
import { faultOfCause } from './cause-fault.ts';

const cause = (id: CauseProbability['id']): CauseProbability => ({
  id,
  probability: 0.8,
  places: [
    { group: ['tank top'], probability: 0.2 },
    { group: ['cap and neck'], probability: 0.6 },
  ],
  diameterMm: { median: 0.62, lo90: 0.56, hi90: 0.69 },
  relativeLogEvidence: 0,
  byPhase: [],
});

it('draws a leak at its likeliest place with its median size', () => {
  const drawn = faultOfCause(cause('leak'), 'engine-vacuum');
  expect(drawn?.fault).toEqual({ kind: 'leak', place: 'cap', size: expect.closeTo(0.62e-3, 9) });
  expect(drawn?.place).toEqual({ name: 'cap and neck', probability: 0.6 });
  expect(drawn?.isSizeAssumed).toBe(false);
});

it('a seeping valve has no size from the finding, whose diameter is that of a hole to the open air', () => {
  const drawn = faultOfCause(cause('purge_leak'), 'engine-vacuum');
  expect(drawn?.fault.size).toBeUndefined();
  expect(drawn?.isSizeAssumed).toBe(true);
});

it('every cause on every layout is a fault that the layout can have, or is not drawn', () => {
  for (const layout of LAYOUTS) {
    for (const id of CAUSES) {
      const drawn = faultOfCause(cause(id), layout);
      if (drawn === undefined) continue;
      const system = { layout, closure: 'capped', hasRecovery: true } as const;
      expect(() => drawnNetwork(system, [drawn.fault]), `${layout}, ${id}`).not.toThrow();
    }
  }
  expect(faultOfCause(cause('none'), 'engine-vacuum')).toBeUndefined();
  expect(faultOfCause(cause('pump_weak'), 'engine-vacuum')).toBeUndefined();
});
