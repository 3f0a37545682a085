import { expect, it } from 'vitest';
import { engineAirFlow, purgeTrim } from './fuel-trim.ts';

it('takes fuel away for rich purge and adds it for clean air', () => {
  expect(purgeTrim(1e-4, 0, 1e-2)).toBeCloseTo(-0.147, 12);
  expect(purgeTrim(0, 1e-4, 1e-2)).toBeCloseTo(0.01, 12);
  // Vapour in stoichiometric air disturbs nothing.
  expect(purgeTrim(1e-4, 14.7e-4, 1e-2)).toBeCloseTo(0, 12);
  expect(purgeTrim(1, 1, 0)).toBe(0);
});

it('gives a few grams of air per second at idle (2 L, 750 rpm, 35 kPa)', () => {
  const flow = engineAirFlow(35000, 750, 2e-3, 0.8, 287 * 300);
  expect(flow).toBeGreaterThan(3e-3);
  expect(flow).toBeLessThan(6e-3);
});
