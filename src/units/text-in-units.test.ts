import { describe, expect, test } from 'vitest';
import { textInUnits, type UnitsOfText } from './text-in-units.ts';

const english: Pick<UnitsOfText, 'number' | 'symbol'> = {
  number: (value, decimals) => value.toFixed(decimals).replace('-', '−'),
  symbol: (unit) => (unit === 'inH2O' ? 'inH₂O' : unit),
};
const METRIC: UnitsOfText = { ...english, pressure: 'kPa', length: 'mm', temperature: '°C' };
const WATER: UnitsOfText = { ...english, pressure: 'inH2O', length: 'in', temperature: '°F' };
const PSI: UnitsOfText = { ...WATER, pressure: 'psi' };
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

// Worked out by hand: 1 inH2O = 0.24908 kPa, 1 psi = 6.8948 kPa, 1 inHg = 3.3864 kPa.
describe.each([
  [
    'hold 1.2 to 2 kPa (5 to 8 inH2O) of vacuum',
    'hold 1.2 to 2 kPa of vacuum',
    'hold 5 to 8 inH₂O of vacuum',
    'hold 0.17 to 0.29 psi of vacuum',
  ],
  [
    'at 34 to 51 kPa of vacuum (10 to 15 inHg); coil',
    'at 34 to 51 kPa of vacuum; coil',
    'at 136 to 205 inH₂O of vacuum; coil',
    'at 4.9 to 7.4 psi of vacuum; coil',
  ],
  [
    'slowly to −8 inH2O, not beyond',
    'slowly to −2 kPa, not beyond',
    'slowly to −8 inH₂O, not beyond',
    'slowly to −0.29 psi, not beyond',
  ],
  ['no more than 7 kPa (1 psi).', 'no more than 7 kPa.', 'no more than 28 inH₂O.', 'no more than 1 psi.'],
  [
    'below the 0.5 mm (0.020 in) reference',
    'below the 0.5 mm reference',
    'below the 0.02 in reference',
    'below the 0.02 in reference',
  ],
  [
    'within 3 to 5 K of each other',
    'within 3 to 5 °C of each other',
    'within 5.4 to 9 °F of each other',
    'within 5.4 to 9 °F of each other',
  ],
  ['only below 5 °C', 'only below 5 °C', 'only below 41 °F', 'only below 41 °F'],
  [
    '10 L/min, 12 mmol, 20 to 60 Ω, 5 % in 30 s',
    '10 L/min, 12 mmol, 20 to 60 Ω, 5 % in 30 s',
    '10 L/min, 12 mmol, 20 to 60 Ω, 5 % in 30 s',
    '10 L/min, 12 mmol, 20 to 60 Ω, 5 % in 30 s',
  ],
])('%s', (text, metric, water, psi) => {
  test.each([
    ['metric', METRIC, metric],
    ['inches of water', WATER, water],
    ['psi', PSI, psi],
  ] as const)('in %s', (_, units, wanted) => {
    expect(plain(textInUnits(text, units))).toBe(wanted);
  });
});

test('in German: a comma in, a comma out', () => {
  const german: UnitsOfText = { ...WATER, number: (value, decimals) => value.toFixed(decimals).replace('.', ',') };
  expect(plain(textInUnits('Verlust unter 0,12 kPa (0,5 inH2O) je Minute; 3 bis 5 kPa', german))).toBe(
    'Verlust unter 0,5 inH₂O je Minute; 12 bis 20 inH₂O',
  );
});
