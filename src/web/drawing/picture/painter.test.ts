import fc from 'fast-check';
import { expect, it } from 'vitest';
import { tankTextY } from './painter.ts';

it('keeps the tank’s figures inside the tank, off the surface and off each other at any level', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (fill) => {
      const [top, height, gasText, fuelText] = [100, 160, 60, 26];
      const surface = top + height * (1 - fill);
      const gas = tankTextY(true, gasText, top, height, fill);
      const fuel = tankTextY(false, fuelText, top, height, fill);
      for (const [y, h] of [
        [gas, gasText],
        [fuel, fuelText],
      ] as const) {
        expect(y).toBeGreaterThanOrEqual(top);
        expect(y + h).toBeLessThanOrEqual(top + height);
        expect(y + h <= surface || y >= surface).toBe(true);
      }
      expect(gas + gasText <= fuel || fuel + fuelText <= gas).toBe(true);
    }),
  );
});
