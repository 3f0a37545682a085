import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import { evaporationMassFlow, saturationTimeConstant, vapourRecoveryPressure } from './evaporation.ts';
import {
  antoineCoefficients,
  antoineVapourPressure,
  antoineVapourPressureDerivative,
  blendReidVapourPressure,
  petrolDensity,
  trueVapourPressure,
  vapourMolarMass,
} from './fuel-vapour.ts';

const rvp = uniform(35e3, 105e3);
const temperature = uniform(255, 320);

describe('vapour pressure of petrol', () => {
  it('rises with temperature and with Reid vapour pressure', () => {
    fc.assert(
      fc.property(rvp, temperature, (r, t) => {
        expect(trueVapourPressure(r, t + 0.1)).toBeGreaterThan(trueVapourPressure(r, t));
        expect(trueVapourPressure(r + 10, t)).toBeGreaterThan(trueVapourPressure(r, t));
      }),
    );
  });

  it('agrees with its two coefficients within 0.3 %', () => {
    fc.assert(
      fc.property(rvp, temperature, (r, t) => {
        const { a, bRankine } = antoineCoefficients(r);
        expect(Math.abs(antoineVapourPressure(a, bRankine, t) / trueVapourPressure(r, t) - 1)).toBeLessThan(3e-3);
      }),
    );
  });

  it('has the derivative of finite differences', () => {
    fc.assert(
      fc.property(rvp, temperature, (r, t) => {
        const { a, bRankine } = antoineCoefficients(r);
        const at = (x: number): number => antoineVapourPressure(a, bRankine, x);
        const numeric = (at(t + 0.01) - at(t - 0.01)) / 0.02;
        expect(Math.abs(numeric / antoineVapourPressureDerivative(a, bRankine, t) - 1)).toBeLessThan(1e-6);
      }),
    );
  });

  it('of a blend: without ethanol it is that of the petrol, and the less ethanol the nearer to it', () => {
    fc.assert(
      fc.property(rvp, (r) => {
        expect(blendReidVapourPressure(r, 0)).toBe(r);
        const shift = (e: number): number => Math.abs(blendReidVapourPressure(r, e) - r);
        // The fit is steep at first: its ethanol term goes as the 0.16th power.
        expect(shift(1e-12)).toBeLessThan(0.2 * shift(1e-6));
        expect(shift(1e-6)).toBeLessThan(0.1 * r);
      }),
    );
    expect(blendReidVapourPressure(55e3, 0.1)).toBeGreaterThan(55e3);
  });

  it('molar mass falls with volatility and is held outside its table; density falls with temperature', () => {
    fc.assert(
      fc.property(rvp, temperature, (r, t) => {
        expect(vapourMolarMass(r + 1000)).toBeLessThanOrEqual(vapourMolarMass(r));
        expect(vapourMolarMass(r)).toBeGreaterThanOrEqual(0.062);
        expect(vapourMolarMass(r)).toBeLessThanOrEqual(0.068);
        expect(petrolDensity(t + 1)).toBeLessThan(petrolDensity(t));
      }),
    );
  });
});

describe('evaporation', () => {
  it('stops at saturation and turns to condensation beyond it', () => {
    const flow = (partial: number): number => evaporationMassFlow(2e-3, 0.3, 40e3, partial, 293, 0.066);
    expect(flow(40e3)).toBe(0);
    expect(flow(39e3)).toBeCloseTo(-flow(41e3), 15);
    expect(flow(39e3)).toBeGreaterThan(0);
  });

  it('fills a closed space with its time constant', () => {
    const [volume, k, area, t, m] = [0.03, 2e-3, 0.3, 293, 0.066];
    const tau = saturationTimeConstant(volume, k, area);
    let partial = 0;
    const step = tau / 5000;
    for (let i = 0; i < 5000; i++) {
      partial += (step * evaporationMassFlow(k, area, 40e3, partial, t, m) * 8.314462618 * t) / (m * volume);
    }
    expect(partial / 40e3).toBeCloseTo(1 - Math.exp(-1), 3);
  });

  it('gives back after a draw the share of the vapour in the gas', () => {
    expect(vapourRecoveryPressure(40e3, 100e3, 2000)).toBeCloseTo(800, 9);
    expect(vapourRecoveryPressure(0, 100e3, 2000)).toBe(0);
  });
});
