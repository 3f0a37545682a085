/** A language of the checks is whole: it says all that English says, in its own words. */
import { describe, expect, test } from 'vitest';
import { CHECKS } from '../catalogue/all.ts';
import { RECORDINGS } from '../catalogue/recordings.ts';
import { MARKS } from '../figure.ts';
import { DEFAULT_FIGURES } from '../figures.ts';
import { DERIVED_IDS } from '../likelihood/derived.ts';
import { DE } from './de.ts';
import { EN } from './en.ts';
import type { ChecksText } from './text.ts';

const OTHERS: readonly (readonly [string, ChecksText])[] = [['de', DE]];

/** Every text by its path; a sentence that takes figures is called with marks in their place. */
function texts(value: unknown, path = ''): readonly (readonly [string, string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'function') return [[path, String(value('«a»', '«b»'))]];
  return Object.entries(value as object).flatMap(([name, inner]) => texts(inner, `${path}.${name}`));
}

/** The words that the catalogue shows by their English name. */
const SHOWN_WORDS = [
  ...new Set([
    ...[...CHECKS, ...RECORDINGS].flatMap(({ outcomes, numbers, equipment }) => [
      ...outcomes.map(({ id }) => id),
      ...(numbers?.fields.map(({ id }) => id) ?? []),
      ...equipment,
    ]),
    ...MARKS,
    ...DERIVED_IDS,
    ...DEFAULT_FIGURES.map(({ unit }) => unit),
  ]),
];
/** Written alike in both, and rightly so. */
const SAME = new Set(['min', 'mm', 'normal', 'multimeter', 'plausible']);

/** Words of English sentences that are no words of German ones. */
const ENGLISH = /\b(the|and|of|with|from|valve|leak|measure|choose|enter|hold|tank is)\b/i;

describe.each(OTHERS)('%s', (_, text) => {
  const english = new Map(texts({ ...EN, words: {} }));
  const other = new Map(texts({ ...text, words: {} }));

  test('has the same texts, step by step', () => {
    expect([...other.keys()].sort()).toEqual([...english.keys()].sort());
    expect(english.size).toBeGreaterThan(300);
  });

  test('has no empty text and none in English', () => {
    for (const [path, said] of other) {
      expect(said.trim(), path).not.toBe('');
      expect(said, path).not.toBe(english.get(path));
      expect(said, path).not.toMatch(ENGLISH);
    }
  });

  test('takes the same figures into each sentence', () => {
    for (const [path, said] of other) {
      for (const mark of ['«a»', '«b»']) expect(said.includes(mark), path).toBe(english.get(path)?.includes(mark));
    }
  });

  test('keeps every number of an English step, so that no limit is lost', () => {
    const numbers = (said: string): readonly string[] =>
      (said.replaceAll('38 checks', '').match(/[−-]?\d+(?:[.,]\d+)?/g) ?? [])
        .map((number) => number.replace(',', '.'))
        .sort();
    for (const [path, said] of other) {
      if (path.startsWith('.checks.') || path.startsWith('.cautions.')) {
        const missing = numbers(english.get(path) ?? '').filter((number) => !numbers(said).includes(number));
        expect(missing, path).toEqual([]);
      }
    }
  });

  test.each(SHOWN_WORDS.map((word) => [word]))('word "%s"', (word) => {
    const said = text.words[word];
    if (SAME.has(word)) return;
    expect(said).toBeDefined();
    expect(said).not.toBe(word);
  });

  test('has no word that nothing shows', () => {
    const sections = ['whole system', 'held', 'not held'];
    expect(Object.keys(text.words).filter((word) => ![...SHOWN_WORDS, ...sections].includes(word))).toEqual([]);
  });

  test('marks what is from memory, without source or judgement as English does', () => {
    const marks: readonly (readonly [RegExp, RegExp])[] = [
      [/no source/, /ohne Quelle/],
      [/\bjudgement\b/, /Einschätzung/],
    ];
    for (const [path, said] of other) {
      for (const [en, own] of marks) expect(own.test(said), path).toBe(en.test(english.get(path) ?? ''));
    }
  });
});
