import { describe, expect, it } from 'vitest';
import { ventAt } from '../vent-by-hand.ts';
import { shutTimes } from './vent-from-draw.ts';

/** Ten samples a second: rest, a draw of five seconds, a hold that leaks, the vent open at `releaseS`. */
function draw(releaseS: number | undefined, endS: number) {
  const timeS = Float64Array.from({ length: endS * 10 }, (_, i) => i / 10);
  const purge = timeS.map((t) => (t >= 10 && t < 15 ? 0.2 : 0));
  const pressure = timeS.map((t) => {
    if (t < 10) return 0;
    if (t < 15) return -400 * (t - 10);
    const held = -2000 + 15 * (t - 15);
    return releaseS === undefined || t < releaseS
      ? held
      : (-2000 + 15 * (releaseS - 15)) * Math.exp(-(t - releaseS) / 0.4);
  });
  return { pressure: { timeS, values: pressure }, purge: { timeS, values: purge } };
}

describe('vent command of a vacuum draw', () => {
  it('is shut from the purge until the vacuum goes all at once', () => {
    const { pressure, purge } = draw(60, 80);
    const [shut, ...others] = shutTimes(pressure, purge);
    expect(others).toEqual([]);
    expect(shut!.fromS).toBeCloseTo(9.95, 6);
    expect(Math.abs(shut!.toS! - 60)).toBeLessThanOrEqual(0.15);
    const vent = ventAt(pressure.timeS, [shut!]);
    expect([vent[90], vent[200], vent[700]]).toEqual([0, 1, 0]);
  });
  it('stays shut where the recording ends before', () => {
    const { pressure, purge } = draw(undefined, 40);
    expect(shutTimes(pressure, purge)).toEqual([{ fromS: 9.95 }]);
  });
  it('a purge that pulls nothing down is no draw', () => {
    const { pressure, purge } = draw(60, 80);
    expect(shutTimes({ ...pressure, values: pressure.values.map((p) => p / 10) }, purge)).toEqual([]);
  });
});
