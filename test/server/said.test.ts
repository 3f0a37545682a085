/** Every sentence of the server's errors has its German: the pages show them to people who chose German. */
import { describe, expect, test } from 'vitest';
import { progressInWords } from '../../src/server/finding/progress-words.ts';
import { FINDING_DE } from '../../src/web/text/finding.de.ts';
import { serverSaidInGerman } from '../../src/web/text/server-said.de.ts';
import { progressOf, sentencesOf } from './sentences.ts';

const FOLDERS = [
  'server',
  'recording',
  'jobs/store',
  'jobs/accounts',
  'jobs/files',
  'jobs/job-file',
  'jobs/backup',
  'jobs/job-store.ts',
  'jobs/file-problem.ts',
];

/** Data, or words that are the same in both languages. */
const IS_DATA = /^[7\s:,."()]*( at 7)?$/;
/** Printed by the commands alone: the pages show the parts of it. */
const OF_COMMANDS = new Set(['7: found 7; expected 7. 7']);

const sentences = sentencesOf(FOLDERS).filter(({ text }) => !IS_DATA.test(text) && !OF_COMMANDS.has(text));

describe('what the server says', () => {
  test('is found in its source', () => {
    expect(sentences.length).toBeGreaterThan(120);
    expect(sentences.map(({ text }) => text)).toContain('Name or password is wrong.');
    expect(sentences.map(({ text }) => text)).toContain('"7" with no header above it');
  });

  test('has its German, whole', () => {
    const english = sentences.filter(({ text }) => {
      const german = serverSaidInGerman(text);
      return german === text || /\b(the|is|not|with|and|cannot|there|which|your)\b/i.test(german);
    });
    expect(english.map(({ text, where }) => `${where}: ${text} -> ${serverSaidInGerman(text)}`)).toEqual([]);
  });

  test('keeps its figures', () => {
    for (const { text } of sentences) {
      const count = (words: string): number => words.split('7').length - 1;
      // The one that names what was being done, in English, leaves it out; a job's id is of no use to a reader.
      if (/ failed at | failed\.$|^There is no job|^The job file does not hold/.test(text)) continue;
      expect(count(serverSaidInGerman(text)), text).toBe(count(text));
    }
  });

  test('of the readers: what kind of file it is, and why lines are left out', () => {
    expect(serverSaidInGerman('a PDF document')).toBe('ein PDF-Dokument');
    expect(serverSaidInGerman('"a;b", which has fewer cells than the header (3 such lines of 9)')).toMatch(
      /weniger Zellen/,
    );
    expect(serverSaidInGerman('ENOENT: something foreign')).toBe('ENOENT: something foreign');
  });

  test('of how far a finding is, has its German', () => {
    // The cause is told by its id, which the server puts into words.
    const said = progressOf(['diagnosis', 'server/work']).map(({ text }) =>
      text.replace('trying 7', 'trying vent_leak'),
    );
    expect(said).toContain('refining');
    for (const english of said) {
      const words = progressInWords(english);
      const german = FINDING_DE.said(words);
      expect(german, words).not.toContain(words);
      expect(german, words).not.toMatch(/Wortlaut/);
    }
  });
});
