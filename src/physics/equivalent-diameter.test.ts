import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import {
  diameterFromEffectiveArea,
  diameterFromMassFlow,
  effectiveAreaFromDiameter,
  massFlowFromDiameter,
  parallelDiameter,
} from './equivalent-diameter.ts';
import { iso6358MassFlow } from './iso6358.ts';
import { areaFromDecay, decayedDifference, decayRate, decayTime } from './vacuum-decay.ts';

const diameter = uniform(1e-5, 0.02);
const drop = uniform(10, 90e3);

describe('equivalent diameter', () => {
  it('inverts through area and through flow', () => {
    fc.assert(
      fc.property(diameter, drop, (d, dp) => {
        expect(Math.abs(diameterFromEffectiveArea(effectiveAreaFromDiameter(d)) / d - 1)).toBeLessThan(1e-12);
        const flow = massFlowFromDiameter(d, 101325, 101325 - dp, 293, 287, 1.4);
        const back = diameterFromMassFlow(flow, 101325, 101325 - dp, 293, 287, 1.4) as number;
        expect(Math.abs(back / d - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('of holes in parallel carries the sum of their flows', () => {
    fc.assert(
      fc.property(fc.array(diameter, { minLength: 1, maxLength: 5 }), (holes) => {
        const flow = (d: number): number => massFlowFromDiameter(d, 101325, 99325, 293, 287, 1.4);
        const sum = holes.reduce((total, d) => total + flow(d), 0);
        expect(Math.abs(flow(parallelDiameter(holes)) / sum - 1)).toBeLessThan(1e-12);
      }),
    );
    expect(parallelDiameter([])).toBe(0);
  });
});

describe('ISO 6358 flow', () => {
  it('is continuous at the critical ratio, zero without a drop, and falls with back pressure', () => {
    fc.assert(
      fc.property(uniform(0.1, 0.9), drop, (b, dp) => {
        const flow = (p2: number): number => iso6358MassFlow(1e-9, b, 101325, p2, 293.15);
        expect(flow(b * 101325 * (1 + 1e-9)) / flow(b * 101325)).toBeCloseTo(1, 9);
        expect(flow(101325 - dp)).toBeGreaterThanOrEqual(flow(101325 - 0.9 * dp));
        expect(flow(101325)).toBe(0);
      }),
    );
  });
});

describe('textbook decay', () => {
  it('time, pressure and area invert each other', () => {
    fc.assert(
      fc.property(uniform(1e-8, 1e-6), uniform(0.05, 0.95), (area, share) => {
        const rate = decayRate(area, 0.04, 293, 101325, 287);
        const time = decayTime(2000, 2000 * share, rate);
        expect(decayedDifference(2000, time, rate)).toBeCloseTo(2000 * share, 6);
        expect(Math.abs(areaFromDecay(2000, 2000 * share, time, 0.04, 293, 101325, 287) / area - 1)).toBeLessThan(1e-9);
      }),
    );
    expect(decayedDifference(2000, 1e6, 0.1)).toBe(0);
  });

  it('is convex: the pressure is lost ever more slowly', () => {
    const at = (t: number): number => decayedDifference(2000, t, 0.2);
    expect(at(0) - at(50)).toBeGreaterThan(at(50) - at(100));
    expect(at(50) - at(100)).toBeGreaterThan(at(100) - at(150));
  });
});
