import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import { dispensedTemperature, displacedGasFlow, displacedVapour, tankOverDispensed } from './refuelling.ts';
import {
  vapourGeneration,
  vapourGenerationAtBarometer,
  vapourGenerationAtEthanol,
  WADE_REDDY_COEFFICIENTS,
} from './wade-reddy.ts';

const rvp = uniform(48e3, 90e3);
const temperature = uniform(278, 312);

describe('Wade-Reddy', () => {
  it('adds over steps of temperature, and grows with volatility', () => {
    for (const set of Object.values(WADE_REDDY_COEFFICIENTS)) {
      fc.assert(
        fc.property(rvp, temperature, (r, t) => {
          const whole = vapourGeneration(set, r, t, t + 10);
          expect(vapourGeneration(set, r, t, t + 4) + vapourGeneration(set, r, t + 4, t + 10)).toBeCloseTo(whole, 9);
          expect(vapourGeneration(set, r + 500, t, t + 10)).toBeGreaterThan(whole);
        }),
      );
    }
  });

  it('keeps its ends between altitudes and fuels', () => {
    const inHg = 3386.38864;
    expect(vapourGenerationAtBarometer(2, 3, 29.069 * inHg)).toBeCloseTo(2, 6);
    expect(vapourGenerationAtBarometer(2, 3, 24.087 * inHg)).toBeCloseTo(3, 6);
    expect(vapourGenerationAtBarometer(0.1, 3, 31 * inHg)).toBe(0);
    expect(vapourGenerationAtEthanol(2, 3, 0)).toBe(2);
    expect(vapourGenerationAtEthanol(2, 3, 0.1)).toBe(3);
    expect(vapourGenerationAtEthanol(2, 3, 0.15)).toBe(3);
  });
});

describe('refuelling', () => {
  it('displaces more vapour of warmer and more volatile fuel; the difference stays within its limits', () => {
    fc.assert(
      fc.property(rvp, temperature, (r, t) => {
        expect(displacedVapour(t + 1, 5, r)).toBeGreaterThan(displacedVapour(t, 5, r));
        expect(displacedVapour(t, 5, r + 100)).toBeGreaterThan(displacedVapour(t, 5, r));
        const over = tankOverDispensed(dispensedTemperature(t));
        expect(over).toBeGreaterThanOrEqual(0);
        expect(over).toBeLessThanOrEqual(20 / 1.8);
      }),
    );
  });

  it('pushes out as much gas as liquid comes in, more when vapour is made', () => {
    expect(displacedGasFlow(6e-4, 0)).toBe(6e-4);
    expect(displacedGasFlow(6e-4, 0.2)).toBeCloseTo(7.2e-4, 12);
  });
});
