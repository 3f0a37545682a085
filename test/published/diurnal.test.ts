import { describe, expect, it } from 'vitest';
import { DIURNAL_PROFILE_F, diurnalTemperature } from '../../src/physics/diurnal.ts';
import { expectPrinted, fahrenheit } from './printed.ts';

const FAHRENHEIT = [
  72.0, 72.5, 75.5, 80.3, 85.2, 89.4, 93.1, 95.1, 95.8, 96.0, 95.5, 94.1, 91.7, 88.6, 85.5, 82.8, 80.9, 79.0, 77.2,
  75.8, 74.7, 73.9, 73.3, 72.6, 72.0,
];
const CELSIUS =
  '22.2 22.5 24.2 26.8 29.6 31.9 33.9 35.1 35.4 35.6 35.3 34.5 33.2 31.4 29.7 28.2 27.2 26.1 25.1 24.3 23.7 23.3 22.9 22.6 22.2'.split(
    ' ',
  );

describe('diurnal profile 72 to 96 degF (40 CFR 86 App. II / 86.133; full table from memory)', () => {
  it('hour by hour in degF and degC (from memory)', () => {
    FAHRENHEIT.forEach((degrees, hour) => {
      expect(diurnalTemperature(hour * 3600)).toBeCloseTo(fahrenheit(degrees), 9);
      expectPrinted(diurnalTemperature(hour * 3600) - 273.15, CELSIUS[hour] as string);
    });
  });

  it('integrity: peak at hour 9, mean of hours 0 to 23 is 83.354 degF, start equals end (K)', () => {
    expect(DIURNAL_PROFILE_F).toHaveLength(25);
    expect(DIURNAL_PROFILE_F.indexOf(Math.max(...DIURNAL_PROFILE_F))).toBe(9);
    expectPrinted(DIURNAL_PROFILE_F.slice(0, 24).reduce((sum, degrees) => sum + degrees, 0) / 24, '83.354');
    expect(DIURNAL_PROFILE_F[24]).toBe(DIURNAL_PROFILE_F[0]);
  });

  it('integrity: largest rise 4.9 degF per hour, hour 3 to 4 (K)', () => {
    const rises = DIURNAL_PROFILE_F.slice(1).map((degrees, i) => degrees - (DIURNAL_PROFILE_F[i] as number));
    expectPrinted(Math.max(...rises), '4.9');
    expect(rises.indexOf(Math.max(...rises))).toBe(3);
  });
});
