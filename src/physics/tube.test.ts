import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import {
  laminarTubeVolumeFlow,
  tubeMassFlow,
  tubeReynoldsNumber,
  tubeVolumeFlow,
  tubeVolumeFlowDerivative,
  turbulentTubeVolumeFlow,
} from './tube.ts';

const MU = 1.81e-5;
const RHO = 1.2;
const diameter = uniform(2e-3, 20e-3);
const length = uniform(0.1, 5);
const drop = uniform(0.01, 5e3);

describe('flow through a tube', () => {
  it('is odd, and grows with the drop', () => {
    fc.assert(
      fc.property(diameter, length, drop, drop, (d, l, a, b) => {
        const flow = (dp: number): number => tubeVolumeFlow(d, l, RHO, MU, dp);
        expect(flow(-a)).toBe(-flow(a));
        if (a < b) expect(flow(a)).toBeLessThan(flow(b));
        expect(tubeMassFlow(d, l, RHO, MU, a)).toBe(RHO * flow(a));
      }),
    );
    expect(tubeVolumeFlow(0.01, 1, RHO, MU, 0)).toBe(0);
  });

  it('is laminar at small drops and turbulent at large ones', () => {
    expect(tubeVolumeFlow(4e-3, 2, RHO, MU, 1) / laminarTubeVolumeFlow(4e-3, 2, MU, 1)).toBeCloseTo(1, 6);
    expect(tubeVolumeFlow(8e-3, 1, RHO, MU, 2000) / turbulentTubeVolumeFlow(8e-3, 1, RHO, MU, 2000)).toBeCloseTo(1, 3);
  });

  it('meets the Darcy-Weisbach law with the Blasius factor', () => {
    const [d, l, dp] = [8e-3, 1, 2000];
    const flow = turbulentTubeVolumeFlow(d, l, RHO, MU, dp);
    const velocity = flow / ((Math.PI * d * d) / 4);
    const friction = 0.3164 / tubeReynoldsNumber(flow, d, RHO, MU) ** 0.25;
    expect((friction * l * RHO * velocity * velocity) / (2 * d)).toBeCloseTo(dp, 6);
  });

  it('has the derivative of finite differences, and a finite one at zero', () => {
    fc.assert(
      fc.property(diameter, length, drop, (d, l, dp) => {
        const h = 1e-4 * dp;
        const numeric = (tubeVolumeFlow(d, l, RHO, MU, dp + h) - tubeVolumeFlow(d, l, RHO, MU, dp - h)) / (2 * h);
        expect(Math.abs(numeric / tubeVolumeFlowDerivative(d, l, RHO, MU, dp) - 1)).toBeLessThan(1e-6);
      }),
    );
    expect(tubeVolumeFlowDerivative(4e-3, 1, RHO, MU, 0)).toBe(laminarTubeVolumeFlow(4e-3, 1, MU, 1));
  });
});
