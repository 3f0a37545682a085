/** Every way in which an entry can be refused is said in German. */
import { expect, test } from 'vitest';
import { CHECKS } from '../../checks/catalogue/all.ts';
import { readEntry } from '../../checks/read-entry.ts';
import { refusedDe } from './checks-words.de.ts';

const refusals = (check: string, numbers: Readonly<Record<string, string>>): readonly string[] => {
  const read = readEntry(check, { numbers });
  // As the form shows it, beside its field.
  return read.ok ? [] : read.problems.map(({ text, field = '' }) => text.replace(`${field}: `, ''));
};
const ENGLISH = /\b(the|is|are|expected|found|a unit|swapped|nothing|number|between|and|with|or)\b/;

function expectGerman(sentences: readonly string[]): void {
  expect(sentences.length).toBeGreaterThan(0);
  for (const sentence of sentences) {
    const said = refusedDe(sentence);
    expect(said).not.toBe(sentence);
    expect(said, sentence).not.toMatch(ENGLISH);
  }
}

const NUMERIC = CHECKS.flatMap(({ id, numbers }) => (numbers === undefined ? [] : [{ id, fields: numbers.fields }]));

test.each(NUMERIC)(
  '$id: left empty, no number, no unit, a unit of something else, an unknown one, out of range',
  ({ id, fields }) => {
    const [field] = fields;
    const other = field!.quantity === 'pressure' ? '1 mm' : '1 kPa';
    for (const text of ['', 'much', '12', other, '1 parsec', `1e9 ${field!.unit}`]) {
      expectGerman(refusals(id, { [field!.id]: text }));
    }
  },
);

test.each([
  ['T12', { start: '12 inHg', 'after 30 s': '-11 inHg' }],
  ['T12', { start: '-5 inHg', 'after 30 s': '-11 inHg' }],
  ['T19', { start: '10 inH2O', end: '-3 inH2O', time: '60 s', 'vapour volume': '30 L' }],
  ['T19', { start: '10 inH2O', end: '14 inH2O', time: '60 s', 'vapour volume': '30 L' }],
  ['T19', { start: '1 inH2O', end: '1 inH2O', time: '60 s', 'vapour volume': '30 L' }],
  ['T20', { flow: '0.1 L/min', pressure: '10 inH2O', 'blank flow': '0.5 L/min' }],
  ['T29', { weight: '900 g', 'dry weight': '1.4 kg' }],
  ['T33', { 'reference before': '2 kPa', tank: '-1 kPa', 'reference after': '2 kPa' }],
  [
    'T08',
    {
      'first applied': '5 inH2O',
      'first reading': '5 inH2O',
      'second applied': '5.2 inH2O',
      'second reading': '5 inH2O',
    },
  ],
] as const)('%s %j: each possible, not together', (check, numbers) => {
  expectGerman(refusals(check, numbers));
});
