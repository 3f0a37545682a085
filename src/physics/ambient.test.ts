import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import { altitudeFromPressure, geopotentialAltitude, standardPressure, standardTemperature } from './atmosphere.ts';
import { coilResistance, coilResistanceAt20C, coilTemperature } from './coil.ts';
import { diurnalTemperature, scaledDiurnalTemperature } from './diurnal.ts';
import { permeationRatio } from './permeation.ts';
import { waterSaturationPressure } from './water-vapour.ts';

describe('atmosphere', () => {
  it('pressure and altitude invert each other; both fall with height', () => {
    fc.assert(
      fc.property(uniform(-400, 5000), (z) => {
        expect(altitudeFromPressure(standardPressure(z))).toBeCloseTo(z, 5);
        expect(standardPressure(z + 1)).toBeLessThan(standardPressure(z));
        expect(standardTemperature(z + 1)).toBeLessThan(standardTemperature(z));
        expect(Math.abs(geopotentialAltitude(z) - z)).toBeLessThan(5);
      }),
    );
  });

  it('water vapour pressure rises with temperature', () => {
    fc.assert(
      fc.property(uniform(255, 320), (t) => {
        expect(waterSaturationPressure(t + 0.01)).toBeGreaterThan(waterSaturationPressure(t));
      }),
    );
  });
});

describe('diurnal day', () => {
  it('repeats, has no jump, and scales to other extremes', () => {
    fc.assert(
      fc.property(uniform(0, 86400), (t) => {
        expect(diurnalTemperature(t + 86400)).toBeCloseTo(diurnalTemperature(t), 6);
        expect(Math.abs(diurnalTemperature(t + 60) - diurnalTemperature(t))).toBeLessThan(0.1);
        const scaled = scaledDiurnalTemperature(t, 280, 300);
        expect(scaled).toBeGreaterThanOrEqual(280 - 1e-9);
        expect(scaled).toBeLessThanOrEqual(300 + 1e-9);
      }),
    );
    expect(scaledDiurnalTemperature(9 * 3600, 280, 300)).toBeCloseTo(300, 9);
    expect(scaledDiurnalTemperature(0, 280, 300)).toBeCloseTo(280, 9);
  });
});

describe('coil and permeation', () => {
  it('resistance, temperature and the value at 20 degC invert each other', () => {
    fc.assert(
      fc.property(uniform(5, 60), uniform(240, 400), (ohm, t) => {
        const hot = coilResistance(ohm, t);
        expect(coilTemperature(ohm, hot)).toBeCloseTo(t, 6);
        expect(coilResistanceAt20C(hot, t)).toBeCloseTo(ohm, 9);
      }),
    );
  });

  it('permeation ratios multiply', () => {
    expect(permeationRatio(300, 290) * permeationRatio(310, 300)).toBeCloseTo(permeationRatio(310, 290), 12);
    expect(permeationRatio(300, 300)).toBe(1);
  });
});
