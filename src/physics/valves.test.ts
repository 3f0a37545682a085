import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import { checkValveArea, checkValveAreaDerivative } from './check-valve.ts';
import { pulseValveMeanArea, pulseValveMeanMassFlow, pulseValveOpenFraction } from './pulse-valve.ts';
import { reliefValveArea, reliefValveAreaDerivative } from './relief-valve.ts';

const pressure = uniform(-12e3, 12e3);

describe('check valve', () => {
  const at = (dp: number): number => checkValveArea(dp, 200, 900, 1e-5, 1e-9);

  it('keeps its leak when shut or pushed back, is fully open beyond, and never closes as pressure rises', () => {
    expect(at(-5000)).toBe(1e-9);
    expect(at(200)).toBe(1e-9);
    expect(at(900)).toBeCloseTo(1e-5, 15);
    fc.assert(
      fc.property(pressure, pressure, (a, b) => {
        expect(at(Math.max(a, b))).toBeGreaterThanOrEqual(at(Math.min(a, b)));
      }),
    );
  });

  it('has the derivative of finite differences', () => {
    fc.assert(
      fc.property(pressure, (dp) => {
        const numeric = (at(dp + 0.1) - at(dp - 0.1)) / 0.2;
        expect(Math.abs(numeric - checkValveAreaDerivative(dp, 200, 900, 1e-5, 1e-9))).toBeLessThan(1e-5 * 1e-5);
      }),
    );
  });
});

describe('relief valve of a cap', () => {
  const at = (gauge: number): number => reliefValveArea(gauge, 6000, 3000, 1000, 2e-5, 0);

  it('is tight within its band and opens beyond it on either side', () => {
    fc.assert(
      fc.property(uniform(-3000, 6000), (gauge) => {
        expect(at(gauge)).toBe(0);
      }),
    );
    expect(at(6500)).toBeCloseTo(1e-5, 12);
    expect(at(-3500)).toBeCloseTo(1e-5, 12);
    expect(at(8000)).toBe(2e-5);
  });

  it('has the derivative of finite differences', () => {
    fc.assert(
      fc.property(pressure, (gauge) => {
        const numeric = (at(gauge + 0.1) - at(gauge - 0.1)) / 0.2;
        const exact = reliefValveAreaDerivative(gauge, 6000, 3000, 1000, 2e-5, 0);
        expect(Math.abs(numeric - exact)).toBeLessThan(1e-5 * 2e-5);
      }),
    );
  });
});

describe('pulse-width valve', () => {
  it('opens more with duty, from 0 to 1', () => {
    const unit = uniform(0, 1);
    fc.assert(
      fc.property(unit, unit, (a, b) => {
        const low = pulseValveOpenFraction(Math.min(a, b), 10, 0.004, 0.003);
        const high = pulseValveOpenFraction(Math.max(a, b), 10, 0.004, 0.003);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(high).toBeGreaterThanOrEqual(low);
      }),
    );
  });

  it('never lifts on a pulse shorter than its opening time, and without delays follows duty', () => {
    expect(pulseValveOpenFraction(0.03, 10, 0.004, 0.003)).toBe(0);
    expect(pulseValveOpenFraction(0.37, 10, 0, 0)).toBe(0.37);
    expect(pulseValveOpenFraction(0.5, 10, 0.004, 0.003)).toBeCloseTo(0.49, 12);
    expect(pulseValveOpenFraction(1, 10, 0.004, 0)).toBe(1);
  });

  it('averages area and flow alike, and seeps when shut', () => {
    expect(pulseValveMeanArea(0, 1e-5, 1e-8)).toBe(1e-8);
    expect(pulseValveMeanArea(0.25, 1e-5, 0)).toBeCloseTo(0.25e-5, 15);
    expect(pulseValveMeanMassFlow(0.25, 4e-4, 0)).toBeCloseTo(1e-4, 15);
  });
});
