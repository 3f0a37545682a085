import { describe, expect, test } from 'vitest';
import { SECTION_NAMES, SECTIONS } from '../../../jobs/record/job.ts';
import { DE } from '../../text/de.ts';
import type { Text } from '../../text/en.ts';
import { EN } from '../../text/en.ts';
import { FIELDS_DE } from '../../text/fields.de.ts';
import { FIELDS_EN, type FieldsText } from '../../text/fields.en.ts';
import { numbersOf } from '../../text/numbers.ts';
import { METRIC, unitsOf } from '../../units/units.ts';
import { lineWordsOf } from './line-words.ts';
import { partsThatDiffer, sectionLines } from './section-lines.ts';

const LANGUAGES = [
  ['en-GB', EN, FIELDS_EN],
  ['de-DE', DE, FIELDS_DE],
] as const;
const RECORDING = '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b11';

function wordsIn(locale: string, text: Text, fields: FieldsText) {
  const numbers = numbersOf(locale, text.common.under, text.common.over);
  const units = unitsOf(METRIC, () => undefined, numbers.fixed, text.common.to);
  return lineWordsOf({ fields, text, numbers, units, recordings: new Map([[RECORDING, 'First test']]) });
}
const english = wordsIn('en-GB', EN, FIELDS_EN);

interface Shape {
  readonly type: string;
  readonly shape?: Readonly<Record<string, unknown>>;
  readonly element?: unknown;
  readonly innerType?: unknown;
  readonly options?: readonly unknown[];
  readonly entries?: Readonly<Record<string, string>>;
}
const shapeOf = (schema: unknown): Shape => (schema as { readonly def: Shape }).def;

/** Every field of a section with the fixed values it may have; what the tables show whole is not looked into. */
function fieldsOf(schema: unknown, key: string, visit: (key: string, values: readonly string[]) => void): void {
  const { type, shape, element, innerType, options, entries } = shapeOf(schema);
  if (type === 'enum') visit(key, Object.values(entries ?? {}));
  if (['status', 'results', 'conditions', 'numbers'].includes(key) && type !== 'enum') return;
  for (const [name, part] of Object.entries(shape ?? {})) {
    visit(name, []);
    fieldsOf(part, name, visit);
  }
  for (const part of [element, innerType, ...(options ?? [])]) if (part !== undefined) fieldsOf(part, key, visit);
}

/** Of no use to a reader. */
const UNTOLD = ['id', 'schema', 'sha256', 'bytes', 'mediaType', 'confidence', 'reasons', 'demo', 'zone'];
/** Written as they are: names of units. */
const AS_THEY_ARE = ['unit'];

describe.each(LANGUAGES)('in %s', (locale, text, fields) => {
  const words = wordsIn(locale, text, fields);
  test('every field that a job keeps has a name, every fixed value its words', () => {
    const missing: string[] = [];
    let looked = 0;
    for (const name of SECTION_NAMES) {
      fieldsOf(SECTIONS[name], name, (key, values) => {
        looked++;
        if (!UNTOLD.includes(key) && !(key in SECTIONS) && words.field(key) === undefined)
          missing.push(`${name}: ${key}`);
        for (const value of values) {
          // "comma" for a comma, but "hold" for hold in English: only what is written like a name inside is raw.
          const isRaw = words.value(key, value) === value && /[-_A-Z\t;,.|]/.test(value);
          if (isRaw && !AS_THEY_ARE.includes(key) && !UNTOLD.includes(key)) missing.push(`${name}: ${key} ${value}`);
        }
      });
    }
    expect(missing).toEqual([]);
    expect(looked).toBeGreaterThan(120);
    // The one is the other's shape, and no name is empty.
    expect(Object.keys(fields.names)).toEqual(Object.keys(FIELDS_EN.names));
    expect(Object.values(fields.names).filter((name) => name.trim() === '')).toEqual([]);
  });
});

describe('lines of a section', () => {
  const checks = [
    {
      id: 'a',
      at: '2026-01-02T08:00:00.000Z',
      what: 'Clamped the vent hose',
      speaksFor: ['vent_leak'],
      strength: 'clear',
    },
    { id: 'b', what: 'Weighed the canister', measured: { value: 912, unit: 'g' } },
  ];

  test('say in words where and what', () => {
    const lines = sectionLines(checks, english, 'checks');
    const said = lines.map(({ name, text }) => `${name}: ${text}`);
    expect(said).toContain(`Clamped the vent hose · speaks for: ${EN.causes.vent_leak}`);
    expect(said).toContain('Weighed the canister · measured · value: 912');
    expect(said.join()).not.toMatch(/speaksFor|vent_leak|T08:00/);
  });

  test('an item keeps its row when another before it goes', () => {
    const lines = (list: unknown) => sectionLines(list, english, 'checks');
    const parts = partsThatDiffer(lines(checks), lines(checks.slice(1)));
    expect(parts.length).toBe(4);
    expect(parts.every(({ name, theirs }) => name.startsWith('Clamped') && theirs === undefined)).toBe(true);
  });

  test('figures stand in the units of the page, recordings under their names', () => {
    const car = { schema: 'vaporwright-car-1', tankVolumeM3: 0.055, pressureSensor: { minGaugePa: -3735 } };
    const said = sectionLines(car, english, 'car').map(({ name, text }) => `${name}: ${text}`);
    expect(said).toEqual(['tank volume: 55.0\u00a0L', 'pressure sensor · lowest reading: \u22123.74\u00a0kPa']);
    const [line] = sectionLines({ before: [RECORDING] }, english, 'proof');
    expect(line?.text).toBe('First test');
  });

  test('two states that read alike but differ are shown', () => {
    const of = (volume: number) => sectionLines({ tankVolumeM3: volume }, english, 'car');
    expect(partsThatDiffer(of(0.055), of(0.05501)).length).toBe(1);
    expect(partsThatDiffer(of(0.055), of(0.055))).toEqual([]);
  });
});
