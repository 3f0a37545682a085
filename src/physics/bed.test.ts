import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bedMassFlow, bedMassFlowDerivative, bedPressureDrop, ergunResistance } from './bed.ts';

const linear = fc.double({ min: 1e3, max: 1e7, noNaN: true });
const quadratic = fc.double({ min: 0, max: 1e10, noNaN: true });
const drop = fc.double({ min: -5e3, max: 5e3, noNaN: true });

describe('flow through a bed', () => {
  it('is the inverse of the pressure drop, and odd', () => {
    fc.assert(
      fc.property(linear, quadratic, drop, (a, b, dp) => {
        const flow = bedMassFlow(a, b, dp);
        expect(Math.abs(bedPressureDrop(a, b, flow) - dp)).toBeLessThan(1e-9 * (1 + Math.abs(dp)));
        expect(bedMassFlow(a, b, -dp)).toBe(-flow);
      }),
    );
  });

  it('has the derivative of finite differences', () => {
    fc.assert(
      fc.property(linear, quadratic, drop, (a, b, dp) => {
        fc.pre(Math.abs(dp) > 1e-6);
        const h = 1e-4 * Math.abs(dp);
        const numeric = (bedMassFlow(a, b, dp + h) - bedMassFlow(a, b, dp - h)) / (2 * h);
        expect(Math.abs(numeric / bedMassFlowDerivative(a, b, dp) - 1)).toBeLessThan(1e-6);
      }),
    );
    expect(bedMassFlowDerivative(1e5, 1e9, 0)).toBeCloseTo(1e-5, 15);
  });

  it('by Ergun: twice the length is twice the drop, finer grains resist more', () => {
    const bed = ergunResistance(0.1, 5e-3, 2e-3, 0.4, 1.2, 1.8e-5);
    const long = ergunResistance(0.2, 5e-3, 2e-3, 0.4, 1.2, 1.8e-5);
    const fine = ergunResistance(0.1, 5e-3, 1e-3, 0.4, 1.2, 1.8e-5);
    expect(bedPressureDrop(long.linearPaSPerKg, long.quadraticPaS2PerKg2, 1e-3)).toBeCloseTo(
      2 * bedPressureDrop(bed.linearPaSPerKg, bed.quadraticPaS2PerKg2, 1e-3),
      9,
    );
    expect(fine.linearPaSPerKg).toBeCloseTo(4 * bed.linearPaSPerKg, 6);
    expect(fine.quadraticPaS2PerKg2).toBeCloseTo(2 * bed.quadraticPaS2PerKg2, 3);
  });
});
