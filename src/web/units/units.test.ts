import { fc, test as prop } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { numbersOf } from '../text/numbers.ts';
import { LENGTH_UNITS, METRIC, PRESSURE_UNITS, TEMPERATURE_UNITS, unitsOf, VOLUME_UNITS } from './units.ts';

const { fixed } = numbersOf('en-GB', 'under', 'over');
const units = (choice = METRIC) => unitsOf(choice, () => undefined, fixed, 'to');

describe('units as chosen', () => {
  test('an interval is written as everywhere', () => {
    expect(units().printInterval('length', 0.62e-3, 0.56e-3, 0.69e-3)).toBe('0.62\u00a0mm (0.56\u00a0to\u00a00.69)');
    expect(units({ ...METRIC, length: 'in' }).printInterval('length', 0.0254e-2, 0.0127e-2, 0.0508e-2)).toBe(
      '0.010\u00a0in (0.005\u00a0to\u00a00.020)',
    );
  });

  test.each([
    // 14 inH2O = 3.487 kPa by the conventional density of water, 1 psi = 6.894757 kPa, 1 mmHg = 133.322 Pa (NIST SP 811)
    ['kPa', 3487, '3.49\u00a0kPa'],
    ['inH2O', 3487, '14.0\u00a0inH₂O'],
    ['psi', 6894.757, '1.000\u00a0psi'],
    ['mmHg', 1333.22, '10.0\u00a0mmHg'],
  ] as const)('pressure in %s', (pressure, pa, printed) => {
    expect(units({ ...METRIC, pressure }).print('pressure', pa)).toBe(printed);
  });

  test('temperatures', () => {
    expect(units().print('temperature', 293.15)).toBe('20\u00a0°C');
    expect(units({ ...METRIC, temperature: '°F' }).print('temperature', 293.15)).toBe('68\u00a0°F');
  });

  prop.prop([
    fc.record({
      pressure: fc.constantFrom(...PRESSURE_UNITS),
      length: fc.constantFrom(...LENGTH_UNITS),
      temperature: fc.constantFrom(...TEMPERATURE_UNITS),
      volume: fc.constantFrom(...VOLUME_UNITS),
    }),
    fc.constantFrom('pressure', 'length', 'temperature', 'volume'),
    fc.double({ min: -1e5, max: 1e5, noNaN: true }),
  ])('what is typed in any unit comes back', (choice, quantity, value) => {
    const chosen = units(choice);
    expect(chosen.from(quantity as 'pressure', chosen.to(quantity as 'pressure', value))).toBeCloseTo(value, 6);
  });
});
