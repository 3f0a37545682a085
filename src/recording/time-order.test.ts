import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { orderTimes, RESTART_LINES } from './time-order.ts';

const dropped = (times: number[]) => orderTimes(Float64Array.from(times), false).dropped;

describe('orderTimes', () => {
  it('leaves rising times alone', () => {
    expect(orderTimes(Float64Array.of(0, 1, 2.5, 2.6), false)).toEqual({ dropped: [], midnights: [] });
  });
  it('keeps the first of equal times', () => {
    expect(dropped([0, 1, 1, 1, 2])).toEqual([
      { index: 2, reason: 'duplicated-time' },
      { index: 3, reason: 'duplicated-time' },
    ]);
  });
  it('leaves a single time out that runs ahead of what follows', () => {
    expect(dropped([0, 1, 2000, 3, 4, 5])).toEqual([{ index: 2, reason: 'time-ahead' }]);
    expect(dropped([900, 1, 2, 3, 4])).toEqual([{ index: 0, reason: 'time-ahead' }]);
  });
  it('leaves times out that go back until the latest is passed again', () => {
    expect(dropped([0, 1, 2, 3, 1.5, 2.5, 4])).toEqual([
      { index: 4, reason: 'backward-time' },
      { index: 5, reason: 'backward-time' },
    ]);
  });
  it('tells a second recording in the same file', () => {
    const times = [...Array(40).keys(), ...Array(RESTART_LINES + 5).keys()];
    expect(orderTimes(Float64Array.from(times), false).restartAt).toBe(40);
  });
  it('passes midnight on a clock without date, not on other times', () => {
    const times = [86398, 86399, 0, 1, 2];
    const clock = Float64Array.from(times);
    expect(orderTimes(clock, true)).toMatchObject({ dropped: [], midnights: [2] });
    expect([...clock]).toEqual([86398, 86399, 86400, 86401, 86402]);
    expect(orderTimes(Float64Array.from(times), false).dropped.length).toBeGreaterThan(0);
  });
  it('always leaves strictly rising times, and counts every one that it leaves out', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 1, maxLength: 60 }), (times) => {
        const { keep, dropped: out, restartAt } = orderTimes(Float64Array.from(times), false);
        fc.pre(restartAt === undefined);
        const kept = times.filter((_, i) => keep === undefined || keep[i] === 1);
        expect(kept.length + out.length).toBe(times.length);
        for (let i = 1; i < kept.length; i++) expect(kept[i]!).toBeGreaterThan(kept[i - 1]!);
      }),
    );
  });
});
