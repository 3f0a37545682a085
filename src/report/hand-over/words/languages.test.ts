import { expect, test } from 'vitest';
import { HAND_OVER_LANGUAGES } from '../hand-over.ts';
import { EN } from './en.ts';
import { HAND_OVER_WORDS } from './languages.ts';

/** Every text of a catalogue by its path; functions are called with marks in place of their arguments. */
function texts(value: unknown, path = ''): readonly (readonly [string, string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'function') {
    // Numbers among the arguments choose a form of the sentence.
    return [0, 0.5, 0.99].map((n) => [`${path}(${n})`, String(value(n, `«a${n}»`, '«b»', true))] as const);
  }
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => texts(inner, path === '' ? name : `${path}.${name}`));
}

/** The same in both languages, and rightly so. */
const SAME =
  /^(numbers\.decimalSign|codeStatus\.permanent|facts\.(hash|code|tank|status|phase)|minutes|kilometres|repairDone|customerSubtitle|day)/;

test.each(HAND_OVER_LANGUAGES.filter((language) => language !== 'en'))('%s says all that English says', (language) => {
  const english = new Map(texts({ ...EN, machineText: null, limitSource: null, frameName: null }));
  const other = new Map(texts({ ...HAND_OVER_WORDS[language], machineText: null, limitSource: null, frameName: null }));
  expect([...other.keys()].sort()).toEqual([...english.keys()].sort());
  for (const [path, said] of other) {
    expect(said.trim(), path).not.toBe('');
    if (!SAME.test(path)) expect(said, path).not.toBe(english.get(path));
  }
});

test('nothing is said to be from memory in one language only', () => {
  const count = (words: unknown, mark: RegExp): number => texts(words).filter(([, said]) => mark.test(said)).length;
  const german = HAND_OVER_WORDS.de;
  expect(count({ ...EN, machineText: null, limitSource: null, frameName: null }, /from memory/)).toBe(
    count({ ...german, machineText: null, limitSource: null, frameName: null }, /aus dem Gedächtnis/),
  );
  expect(count({ ...EN, machineText: null, limitSource: null, frameName: null }, /no source/)).toBe(
    count({ ...german, machineText: null, limitSource: null, frameName: null }, /ohne Quelle/),
  );
});
