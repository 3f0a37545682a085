import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import { BREAKTHROUGH_COEFFICIENTS, bedVolumes, purgeDuration, ventedMass } from './canister.ts';
import {
  AUTOMOTIVE_CARBON,
  adsorptionHeatFlow,
  adsorptionPotential,
  dubininAstakhovUptake,
  langmuirAffinity,
  langmuirPressure,
  langmuirUptake,
  langmuirUptakeDerivative,
  uptakeRate,
} from './carbon.ts';

const pressure = uniform(1, 100e3);
const temperature = uniform(260, 340);

describe('carbon isotherms', () => {
  it('Langmuir grows with pressure, falls with temperature, inverts, and stays below saturation', () => {
    fc.assert(
      fc.property(pressure, temperature, (p, t) => {
        const b = langmuirAffinity(AUTOMOTIVE_CARBON, t);
        const q = langmuirUptake(0.47, b, p);
        expect(langmuirUptake(0.47, b, p * 1.01)).toBeGreaterThan(q);
        expect(langmuirAffinity(AUTOMOTIVE_CARBON, t + 1)).toBeLessThan(b);
        expect(q).toBeLessThan(0.47);
        expect(Math.abs(langmuirPressure(0.47, b, q) / p - 1)).toBeLessThan(1e-9);
        const h = 1e-4 * p;
        const numeric = (langmuirUptake(0.47, b, p + h) - langmuirUptake(0.47, b, p - h)) / (2 * h);
        expect(Math.abs(numeric / langmuirUptakeDerivative(0.47, b, p) - 1)).toBeLessThan(1e-5);
      }),
    );
  });

  it('Dubinin-Astakhov grows with pressure up to its limit at saturation', () => {
    fc.assert(
      fc.property(pressure, (p) => {
        const at = (x: number): number =>
          dubininAstakhovUptake(adsorptionPotential(298.15, x, 243e3, 0.0581222), 0.8, 300e3, 1.05);
        expect(at(p * 1.01)).toBeGreaterThan(at(p));
        expect(at(p)).toBeLessThan(0.8);
        expect(at(243e3)).toBe(0.8);
      }),
    );
  });

  it('uptake moves towards equilibrium and gives off heat', () => {
    expect(uptakeRate(0.05, 0.3, 0.3)).toBe(0);
    expect(uptakeRate(0.05, 0.3, 0.1)).toBeCloseTo(0.01, 12);
    expect(uptakeRate(0.05, 0.1, 0.3)).toBeLessThan(0);
    expect(adsorptionHeatFlow(1e-3, 40e3, 0.058)).toBeCloseTo(40 / 0.058, 9);
  });
});

describe('canister', () => {
  it('vents no more than it gets once past its fit, and more with more vapour', () => {
    for (const coefficients of Object.values(BREAKTHROUGH_COEFFICIENTS)) {
      fc.assert(
        fc.property(uniform(0.05, 0.25), (x) => {
          expect(ventedMass(coefficients, x)).toBeLessThan(x);
          expect(ventedMass(coefficients, x + 0.01)).toBeGreaterThanOrEqual(ventedMass(coefficients, x));
        }),
      );
    }
  });

  it('bed volumes and purge time invert each other', () => {
    expect(purgeDuration(bedVolumes(3e-4, 500, 2e-3), 3e-4, 2e-3)).toBeCloseTo(500, 9);
  });
});
