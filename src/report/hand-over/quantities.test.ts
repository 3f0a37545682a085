import { describe, expect, test } from 'vitest';
import { quantities } from './quantities.ts';

const ENGLISH = { decimalSign: '.', to: 'to', under: 'under', over: 'over' } as const;
const GERMAN = { decimalSign: ',', to: 'bis', under: 'unter', over: 'über' } as const;
const words = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('pressures', () => {
  // 1 inH2O (conventional) = 249.0889 Pa, 1 mmHg = 133.322 Pa, 1 psi = 6894.757 Pa: NIST SP 811.
  test.each([
    ['kPa', '−2.00 kPa'],
    ['inH2O', '−8.0 inH2O'],
    ['mmHg', '−15.0 mmHg'],
    ['psi', '−0.290 psi'],
  ] as const)('-2000 Pa in %s', (pressure, said) => {
    expect(words(quantities({ pressure, length: 'mm', temperature: 'degC' }, ENGLISH).pressure(-2000))).toBe(said);
  });
});

test('lengths: 0.508 mm are 0.020 in by definition of the inch', () => {
  const inch = quantities({ pressure: 'kPa', length: 'in', temperature: 'degC' }, ENGLISH);
  expect(words(inch.diameter(0.508))).toBe('0.020 in');
  expect(words(inch.interval({ median: 0.508, lo90: 0.381, hi90: 0.635 }))).toBe('0.020 in (0.015 to 0.025)');
});

test('temperatures: 293.15 K are 20 °C and 68 °F', () => {
  expect(words(quantities({ pressure: 'kPa', length: 'mm', temperature: 'degC' }, ENGLISH).temperature(293.15))).toBe(
    '20 °C',
  );
  expect(words(quantities({ pressure: 'kPa', length: 'mm', temperature: 'degF' }, ENGLISH).temperature(293.15))).toBe(
    '68 °F',
  );
});

test('German numbers: comma, interval with "bis", bounds in words', () => {
  const q = quantities({ pressure: 'kPa', length: 'mm', temperature: 'degC' }, GERMAN);
  expect(words(q.interval({ median: 0.62, lo90: 0.56, hi90: 0.69 }))).toBe('0,62 mm (0,56 bis 0,69)');
  expect(words(q.percent(0.0002))).toBe('unter 0,1 %');
  expect(words(q.percent(0.9999))).toBe('über 99,9 %');
  expect(words(q.percent(0.994))).toBe('99,4 %');
  expect(words(q.percent(0.5))).toBe('50 %');
});
