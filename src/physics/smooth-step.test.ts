import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import { smoothStep, smoothStepDerivative } from './smooth-step.ts';

describe('smooth step', () => {
  it('runs from 0 to 1, flat at both ends, with the slope of finite differences', () => {
    fc.assert(
      fc.property(uniform(-1, 4), (x) => {
        const numeric = (smoothStep(x + 1e-6, 1, 3) - smoothStep(x - 1e-6, 1, 3)) / 2e-6;
        expect(numeric).toBeCloseTo(smoothStepDerivative(x, 1, 3), 5);
        expect(smoothStep(x, 1, 3) + smoothStep(4 - x, 1, 3)).toBeCloseTo(1, 12);
      }),
    );
    expect([smoothStep(1, 1, 3), smoothStep(2, 1, 3), smoothStep(3, 1, 3)]).toEqual([0, 0.5, 1]);
  });
});
