import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import { ORIFICE_LAMINAR_RELATIVE_DROP } from './constants.ts';
import {
  chokedFlowFactor,
  criticalPressureRatio,
  isentropicFlowFactor,
  orificeAreaFromMassFlow,
  orificeMassFlow,
  orificePressureDropFromMassFlow,
  smoothOrificeMassFlow,
  smoothOrificeMassFlowDerivatives,
} from './orifice.ts';

const gamma = uniform(1.06, 1.66);
const pressure = uniform(20e3, 140e3);
const area = uniform(1e-9, 1e-4);
const temperature = uniform(250, 340);
const gas = uniform(100, 300);
/** Relative drops of either sign: even over the range, and even in size down to a thousandth of the laminar limit. */
const anyDrop = fc.oneof(
  uniform(-0.9, 0.9),
  fc.tuple(uniform(-7.3, -0.05), fc.constantFrom(-1, 1)).map(([exponent, sign]) => sign * 10 ** exponent),
);

describe('orifice flow', () => {
  it('reverses its sign with the pressures', () => {
    fc.assert(
      fc.property(area, pressure, pressure, temperature, gas, gamma, (a, p1, p2, t, r, g) => {
        expect(smoothOrificeMassFlow(a, p1, p2, t, r, g)).toBe(-smoothOrificeMassFlow(a, p2, p1, t, r, g) + 0);
      }),
    );
  });

  it('is the exact law beyond the laminar part, and below it in size within it', () => {
    fc.assert(
      fc.property(pressure, anyDrop.map(Math.abs), gamma, (p1, drop, g) => {
        const exact = orificeMassFlow(1e-6, p1, p1 * (1 - drop), 293, 287, g);
        const smooth = smoothOrificeMassFlow(1e-6, p1, p1 * (1 - drop), 293, 287, g);
        if (drop > 1.001 * ORIFICE_LAMINAR_RELATIVE_DROP) expect(smooth).toBe(exact);
        else expect(smooth).toBeLessThanOrEqual(exact * (1 + 1e-9));
      }),
    );
  });

  it('has the derivatives of finite differences, on both sides of choking and of zero', () => {
    fc.assert(
      fc.property(pressure, anyDrop, gamma, (p1, drop, g) => {
        const p2 = drop >= 0 ? p1 * (1 - drop) : p1 / (1 + drop);
        const join = ORIFICE_LAMINAR_RELATIVE_DROP;
        const size = Math.abs(drop);
        // A finite difference means nothing across a change of law.
        fc.pre(Math.abs(size / join - 1) > 0.05 && Math.abs(1 - size - criticalPressureRatio(g)) > 0.01);
        const out = [0, 0];
        const flow = smoothOrificeMassFlowDerivatives(1e-6, p1, p2, 293, 287, g, out);
        const same = smoothOrificeMassFlow(1e-6, p1, p2, 293, 287, g);
        expect(Math.abs(flow - same)).toBeLessThanOrEqual(1e-14 * Math.abs(same));
        const h = Math.max(1e-3, 1e-3 * Math.abs(p1 - p2));
        const at = (d1: number, d2: number): number => smoothOrificeMassFlow(1e-6, p1 + d1, p2 + d2, 293, 287, g);
        const tolerance = 2e-5 * (Math.abs(out[0] as number) + Math.abs(out[1] as number));
        expect(Math.abs((at(h, 0) - at(-h, 0)) / (2 * h) - (out[0] as number))).toBeLessThan(tolerance);
        expect(Math.abs((at(0, h) - at(0, -h)) / (2 * h) - (out[1] as number))).toBeLessThan(tolerance);
      }),
    );
  });

  it('keeps its derivatives bounded and continuous through zero', () => {
    const left = [0, 0];
    const right = [0, 0];
    const at = [0, 0];
    smoothOrificeMassFlowDerivatives(1e-6, 101325, 101325, 293, 287, 1.4, at);
    smoothOrificeMassFlowDerivatives(1e-6, 101325 - 1e-4, 101325, 293, 287, 1.4, left);
    smoothOrificeMassFlowDerivatives(1e-6, 101325 + 1e-4, 101325, 293, 287, 1.4, right);
    const steepest = (1e-6 * 1.3 * isentropicFlowFactor(ORIFICE_LAMINAR_RELATIVE_DROP, 1.4)) / Math.sqrt(287 * 293);
    for (const i of [0, 1]) {
      expect(Math.abs(at[i] as number)).toBeLessThan(steepest / ORIFICE_LAMINAR_RELATIVE_DROP);
      expect(left[i]).toBeCloseTo(at[i] as number, 12);
      expect(right[i]).toBeCloseTo(at[i] as number, 12);
    }
  });

  it('joins in value and slope at the laminar limit and at the critical ratio', () => {
    fc.assert(
      fc.property(gamma, (g) => {
        const out = [0, 0];
        for (const drop of [ORIFICE_LAMINAR_RELATIVE_DROP, 1 - criticalPressureRatio(g)]) {
          const step = 1e-9 * drop;
          const below = smoothOrificeMassFlowDerivatives(1, 1e5, 1e5 * (1 - drop + step), 293, 287, g, out);
          const slopeBelow = out[1] as number;
          const above = smoothOrificeMassFlowDerivatives(1, 1e5, 1e5 * (1 - drop - step), 293, 287, g, out);
          expect(Math.abs(above / below - 1)).toBeLessThan(1e-8);
          const scale = above / (1e5 * drop);
          expect(Math.abs((out[1] as number) - slopeBelow)).toBeLessThan(1e-6 * scale);
        }
      }),
    );
  });

  it('grows with the drop up to choking and not beyond', () => {
    fc.assert(
      fc.property(gamma, uniform(0, 1), uniform(0, 1), (g, a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        const flow = (drop: number): number => smoothOrificeMassFlow(1e-6, 1e5, 1e5 * (1 - drop), 293, 287, g);
        expect(flow(high)).toBeGreaterThanOrEqual(flow(low));
        expect(isentropicFlowFactor(high, g)).toBeLessThanOrEqual(chokedFlowFactor(g) * (1 + 1e-12));
      }),
    );
  });

  it('returns the area and the drop that made a flow', () => {
    fc.assert(
      fc.property(area, pressure, uniform(1e-5, 0.98), gamma, (a, p1, share, g) => {
        const drop = share * (1 - criticalPressureRatio(g));
        const flow = orificeMassFlow(a, p1, p1 * (1 - drop), 293, 287, g);
        const back = orificeAreaFromMassFlow(flow, p1, p1 * (1 - drop), 293, 287, g) as number;
        expect(Math.abs(back / a - 1)).toBeLessThan(1e-12);
        const found = orificePressureDropFromMassFlow(flow, a, p1, 293, 287, g);
        expect(found.kind).toBe('unique');
        if (found.kind === 'unique') expect(Math.abs(found.pressureDropPa / (drop * p1) - 1)).toBeLessThan(1e-7);
      }),
    );
  });

  it('says what the largest flow is when more is asked', () => {
    const result = orificePressureDropFromMassFlow(1, 1e-6, 1e5, 293, 287, 1.4);
    expect(result.kind).toBe('impossible');
    if (result.kind !== 'impossible') return;
    expect(result.maximumMassFlowKgPerS).toBeCloseTo(orificeMassFlow(1e-6, 1e5, 0, 293, 287, 1.4), 15);
    expect(result.reason).toContain(String(result.maximumMassFlowKgPerS));
    expect(orificeAreaFromMassFlow(1e-6, 1e5, 1e5, 293, 287, 1.4)).toBeUndefined();
    expect(orificePressureDropFromMassFlow(0, 1e-6, 1e5, 293, 287, 1.4)).toEqual({ kind: 'unique', pressureDropPa: 0 });
  });
});
