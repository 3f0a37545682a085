import { expect, it } from 'vitest';
import { seriesDiameter } from './series-diameter.ts';

it('passes 2^-1/4 of the diameter for two equal holes, and the small one beside a large one', () => {
  expect(seriesDiameter(4e-3, 4e-3)).toBeCloseTo(4e-3 * 2 ** -0.25, 15);
  expect(seriesDiameter(1e-3, 50e-3)).toBeCloseTo(1e-3, 8);
  expect(seriesDiameter(0, 4e-3)).toBe(0);
});
