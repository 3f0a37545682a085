import { expect, it } from 'vitest';
import { pumpVolumeFlow, pumpVolumeFlowDerivative } from './vacuum-pump.ts';

it('gives free flow at no difference, half at half the stall pressure, none at stall', () => {
  expect(pumpVolumeFlow(0, 1e-5, 4000)).toBe(1e-5);
  expect(pumpVolumeFlow(2000, 1e-5, 4000)).toBeCloseTo(5e-6, 18);
  expect(pumpVolumeFlow(4000, 1e-5, 4000)).toBe(0);
});

it('has the slope of its line', () => {
  const slope = (pumpVolumeFlow(1001, 1e-5, 4000) - pumpVolumeFlow(999, 1e-5, 4000)) / 2;
  expect(pumpVolumeFlowDerivative(1e-5, 4000)).toBeCloseTo(slope, 14);
});
