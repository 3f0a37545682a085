/** The pages as printed: nothing outside the margins, nothing printed over something else, nothing cut off. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';
import { type FontBytes, PDF_FONT_FILES } from '../../src/report/fonts.ts';
import { HAND_OVER_LANGUAGES, type HandOver } from '../../src/report/hand-over/hand-over.ts';
import { handOverPdf } from '../../src/report/hand-over/pdf.ts';
import { imagesOf, type PageWords, type Word, wordsOf } from './pdf-words.ts';
import { longHandOver, sampleHandOver } from './sample-hand-over.ts';

const require = createRequire(import.meta.url);
const read = (name: keyof FontBytes): Uint8Array => readFileSync(require.resolve(PDF_FONT_FILES[name]));
const fonts = {
  serif: read('serif'),
  serifStrong: read('serifStrong'),
  sans: read('sans'),
  sansStrong: read('sansStrong'),
};

/** A4 with the margins that the sheet promises, in points. */
const A4 = { width: 595.28, height: 841.89 };
const SIDE = 43;
const TOP = 40;
const FOOT_TOP = 841.89 - 42;

const isFoot = (word: Word): boolean => word.top > FOOT_TOP;

/** Two words share ink when their boxes overlap by more than the slack of a letter's box. */
function overprints({ words }: PageWords): readonly string[] {
  const found: string[] = [];
  words.forEach((one, i) => {
    for (const other of words.slice(i + 1)) {
      const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
      const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
      if (across > 1 && down > 0.45 * Math.min(one.bottom - one.top, other.bottom - other.top)) {
        found.push(`"${one.text}" and "${other.text}"`);
      }
    }
  });
  return found;
}

const letters = (text: string): string => text.replace(/[\s\u00a0]/g, '');
const SHOP_WORDS = { en: 'Evidence', de: 'Belege' };

const cases: readonly (readonly [string, HandOver])[] = HAND_OVER_LANGUAGES.flatMap((language) => [
  [`usual, ${language}`, { ...sampleHandOver, language }] as const,
  [`long texts, ${language}`, longHandOver(language)] as const,
]);

describe.each(cases)('%s', (_, given) => {
  let pages: readonly PageWords[] = [];
  let body = '';
  beforeAll(async () => {
    pages = wordsOf(await handOverPdf(given, fonts));
    body = pages
      .map(({ words }) =>
        letters(
          words
            .filter((word) => !isFoot(word))
            .map(({ text }) => text)
            .join(''),
        ),
      )
      .join('');
  });

  test('every word lies inside the margins', () => {
    for (const page of pages) {
      expect(page.width).toBeCloseTo(A4.width, 0);
      expect(page.height).toBeCloseTo(A4.height, 0);
      const outside = page.words.filter(
        ({ left, right, top, bottom }) =>
          left < SIDE || right > A4.width - SIDE || top < TOP || bottom > A4.height - 20,
      );
      expect(outside).toEqual([]);
      // Between the last line and the foot there is air.
      const lowest = Math.max(...page.words.filter((word) => !isFoot(word)).map(({ bottom }) => bottom));
      expect(lowest).toBeLessThan(FOOT_TOP - 2);
    }
  });

  test('no word is printed over another', () => {
    for (const [i, page] of pages.entries()) expect(overprints(page), `page ${i + 1}`).toEqual([]);
  });

  test('each page carries the job number and its own number', () => {
    const [page, of] = given.language === 'de' ? ['Seite', 'von'] : ['page', 'of'];
    const job = given.language === 'de' ? 'Auftrag17' : 'Job17';
    for (const [i, { words }] of pages.entries()) {
      const foot = letters(
        words
          .filter(isFoot)
          .map(({ text }) => text)
          .join(''),
      );
      expect(foot).toContain(job);
      expect(foot).toContain(`${page}${i + 1}${of}${pages.length}`);
    }
  });

  test('the customer’s page is one page, and the evidence starts on the next', () => {
    expect(pages.length).toBeGreaterThan(1);
    expect(pages[1]?.words[0]?.text).toBe(SHOP_WORDS[given.language]);
    expect(pages[0]?.words.map(({ text }) => text)).not.toContain(SHOP_WORDS[given.language]);
  });

  test('all that was written down is there in full', () => {
    const said = [
      given.complaint.words,
      ...given.checks.flatMap(({ what, result }) => [what, result]),
      ...given.repairs.flatMap(({ what, parts }) => [
        what,
        ...parts.flatMap(({ name, number = '' }) => [name, number]),
      ]),
      given.proof?.words ?? '',
      given.proof?.missing ?? '',
      ...given.notes.map(({ text }) => text),
      // A hash is broken in two lines, with the file's name beside both.
      ...given.recordings.flatMap(({ sha256 }) => [sha256.slice(0, 24), sha256.slice(-12)]),
      given.vehicle.owner ?? '',
      given.shop.name,
      given.shop.address,
    ];
    // A text may be broken by the page's end, and in a table by its neighbours: then word by word.
    const present = new Set(pages.flatMap(({ words }) => words.map(({ text }) => text)));
    const isThere = (text: string): boolean =>
      body.includes(letters(text)) ||
      text
        .split(/\s+/)
        .filter((word) => word !== '')
        .every((word) => present.has(word) || body.includes(word));
    expect(said.filter((text) => !isThere(text))).toEqual([]);
  });

  test('texts are cut with a mark on the first page and in the foot only', () => {
    const cut = pages.slice(1).flatMap(({ words }) => words.filter((word) => !isFoot(word) && word.text.endsWith('…')));
    expect(cut).toEqual([]);
  });
});

test('the customer’s page alone is one page; the evidence alone has no customer’s page', async () => {
  const customer = wordsOf(await handOverPdf({ ...sampleHandOver, parts: ['customer'] }, fonts));
  expect(customer).toHaveLength(1);
  const evidence = wordsOf(await handOverPdf({ ...sampleHandOver, parts: ['evidence'] }, fonts));
  expect(evidence[0]?.words.map(({ text }) => text)).toContain('Evidence');
});

test('photos are drawn in the evidence and not on the customer’s page', async () => {
  const images = imagesOf(await handOverPdf(longHandOver('en'), fonts));
  expect(images).toHaveLength(5);
  expect(Math.min(...images.map(({ page }) => page))).toBeGreaterThan(1);
  expect(imagesOf(await handOverPdf({ ...sampleHandOver, parts: ['customer'] }, fonts))).toEqual([]);
});

test('thirty parts stand in full with their numbers', async () => {
  const parts = Array.from({ length: 30 }, (_, i) => ({ name: `part-${i + 1}`, number: `INV-${1000 + i}` }));
  const given = { ...sampleHandOver, repairs: [{ ...sampleHandOver.repairs[0]!, parts }] };
  const words = wordsOf(await handOverPdf(given, fonts)).flatMap((page) => page.words.map(({ text }) => text));
  for (const { name, number } of parts) {
    expect(words).toContain(name);
    expect(words).toContain(number);
  }
});

test('letters that the faces have not are set in a plain form, never left out', async () => {
  const given = { ...sampleHandOver, vehicle: { ...sampleHandOver.vehicle, owner: 'Łučija Đ. 漢' } };
  const words = wordsOf(await handOverPdf(given, fonts)).flatMap((page) => page.words.map(({ text }) => text));
  expect(words).toContain('Lucija');
  expect(words).toContain('¿');
});

test('the same hand-over gives the same bytes', async () => {
  const [one, other] = [await handOverPdf(sampleHandOver, fonts), await handOverPdf(sampleHandOver, fonts)];
  expect(Buffer.compare(one, other)).toBe(0);
});
