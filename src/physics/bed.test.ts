import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import { bedMassFlow, bedMassFlowDerivative, bedPressureDrop, ergunResistance } from './bed.ts';

const linear = uniform(1e3, 1e7);
const quadratic = uniform(0, 1e10);
const drop = uniform(-5e3, 5e3);

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

  it('by Ergun: 478.125 Pa/m at 0.1 m/s through grains of 2 mm with 40 % voids (150 and 1.75 by hand)', () => {
    // 150 mu v (1-e)^2/(e^3 d^2) = 379.6875 and 1.75 rho v^2 (1-e)/(e^3 d) = 98.4375 Pa/m.
    const bed = ergunResistance(1, 1, 2e-3, 0.4, 1.2, 1.8e-5);
    expect(bedPressureDrop(bed.linearPaSPerKg, bed.quadraticPaS2PerKg2, 1.2 * 0.1)).toBeCloseTo(478.125, 9);
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
