import { expect, test } from 'vitest';
import { mappingInWords } from './mapping-words.ts';

test('every column is said with what it holds, its unit and how sure the guess is', () => {
  const words = mappingInWords({
    schema: 'vaporwright-mapping-1',
    time: { columns: ['Date', 'Clock'], format: 'date-time', confidence: 0.9 },
    columns: [
      { column: 'FTP', channel: 'tankPressureGaugePa', unit: 'inH2O', reference: 'absolute', confidence: 0.8 },
      { column: 'Vent open', channel: 'ventClosed', inverted: true },
      { column: 'Purge', channel: 'purgeDuty', unit: '1' },
      { column: 'Note', channel: null, confidence: 0 },
    ],
  });
  expect(words).toEqual([
    'Date + Clock: date and time of day  (90 % sure)',
    'FTP: tank pressure, inH2O absolute  (80 % sure)',
    'Vent open: vent closed, on/off, the column says the opposite',
    'Purge: purge duty, as a fraction',
    'Note: left out',
  ]);
});
