import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import { clip, quantise, ratiometricPressure, ratiometricVoltage, sensorLagRate, sensorReading } from './sensor.ts';

const gauge = uniform(-5000, 5000);

describe('pressure sensor', () => {
  it('voltage and pressure invert each other', () => {
    fc.assert(
      fc.property(gauge, uniform(4.5, 5.5), (p, supply) => {
        expect(ratiometricPressure(ratiometricVoltage(p, -3750, 1250, supply), -3750, 1250, supply)).toBeCloseTo(p, 6);
      }),
    );
  });

  it('rounds to the nearest step and holds its limits', () => {
    fc.assert(
      fc.property(gauge, uniform(0.1, 100), (p, step) => {
        expect(Math.abs(quantise(p, step) - p)).toBeLessThanOrEqual(0.5 * step * (1 + 1e-9));
        expect(quantise(quantise(p, step), step)).toBeCloseTo(quantise(p, step), 6);
      }),
    );
    expect(quantise(1.23, 0)).toBe(1.23);
    expect([clip(-9, -1, 2), clip(0.5, -1, 2), clip(9, -1, 2)]).toEqual([-1, 0.5, 2]);
  });

  it('errs by gain and offset, and lags towards its input', () => {
    expect(sensorReading(-2000, 1, 0)).toBe(-2000);
    expect(sensorReading(-2000, 1.02, 30)).toBeCloseTo(-2010, 9);
    expect(sensorLagRate(-2000, -1000, 0.5)).toBe(-2000);
    expect(sensorLagRate(-2000, -2000, 0.5)).toBe(0);
  });
});
