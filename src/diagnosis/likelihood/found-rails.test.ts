import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomStream } from '../../simulation/random.ts';
import { foundRails, noiseOffRails } from './found-rails.ts';

/** Readings of a pressure under noise and steps, stopped at rails. */
function read(pressure: (i: number) => number, noisePa: number, stepPa: number, low: number, high: number, seed = 3) {
  const random = randomStream(seed);
  return Float64Array.from({ length: 900 }, (_, i) => {
    const x = Math.round((pressure(i) + noisePa * random.normal()) / stepPa) * stepPa;
    return Math.min(high, Math.max(low, x));
  });
}
const rails = (p: Float64Array, stepPa: number) => foundRails(p, stepPa, noiseOffRails(p));
const drawnDown = (to: number) => (i: number) => Math.max(to, i < 100 ? 0 : -20 * (i - 100));

describe('rails found in the readings', () => {
  it('are where readings pile up on one side', () => {
    expect(rails(read(drawnDown(-6000), 5, 2, -4374, 9e9), 2).low).toBe(-4374);
    expect(
      rails(
        read((i) => -drawnDown(-6000)(i), 5, 2, -9e9, 4374),
        2,
      ).high,
    ).toBe(4374);
  });

  it('are not found where a pressure only stands still, at whatever level, noise and step', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -4000, max: 4000, noNaN: true }),
        fc.double({ min: 0.2, max: 40, noNaN: true }),
        fc.constantFrom(1, 2, 12, 49),
        fc.integer({ min: 1, max: 1e6 }),
        (level, noisePa, stepPa, seed) => {
          const p = read((i) => (i < 100 ? 0 : level), noisePa, stepPa, -9e9, 9e9, seed);
          expect(rails(p, stepPa)).toEqual({ low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY });
        },
      ),
    );
  });
});
