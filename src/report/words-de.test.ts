/** Every German text of the program calls a thing by the one word that was chosen for it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { REFERENCE_LIMITS } from './limits.ts';
import { GLOSSARY_DE, limitSourceInGerman } from './words-de.ts';

const SRC = fileURLToPath(new URL('..', import.meta.url));
/** Files of German words: by their name, or in one of the folders of a language. */
const IS_GERMAN = /(?:^|[-./])de(?:-[a-z]+)?\.ts$/;
const HOME = join('report', 'words-de.ts');

/** Files that word German beside English, in one file. */
const BOTH = /inspection-words\.ts$/;

const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((file) => !/\.test\.ts$/.test(file) && file !== HOME && (IS_GERMAN.test(file) || BOTH.test(file)))
  .sort();

/** What stands in quotes: comments may speak of a rejected word. */
const said = (source: string): readonly string[] =>
  source.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '').match(/'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`/g) ?? [];

test('there are such files', () => {
  expect(files.length).toBeGreaterThan(15);
  expect(files).toContain(join('checks', 'text', 'de-checks.ts'));
});

describe.each(files)('%s', (file) => {
  const texts = said(readFileSync(join(SRC, file), 'utf8'));
  test.each(GLOSSARY_DE.map(({ word, not }) => [word, not] as const))('says "%s"', (_, not) => {
    expect(texts.filter((text) => not.test(text))).toEqual([]);
  });
});

test.each(REFERENCE_LIMITS)('where $label comes from is said in German, mark included', ({ source }) => {
  const said = limitSourceInGerman(source);
  expect(said).not.toMatch(/from memory|size of|exactly|threshold/);
  expect(said.includes('aus dem Gedächtnis')).toBe(source.includes('from memory'));
});
