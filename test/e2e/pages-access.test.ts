/** Every page for everybody: axe, finger-wide targets, no sideways scrolling, both themes, narrow to very wide. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { axe, smallTargets, sticksOut, withPages } from './pages-open.ts';
import { emptyJob, otherJobs, SAMPLE_ID, sampleJob } from './pages-sample-job.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

const EMPTY = emptyJob('6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b09', 16);
const JOBS = [sampleJob, ...otherJobs, EMPTY];
const PAGES = [
  ['list', '/'],
  ['sheet', `/jobs/${SAMPLE_ID}`],
  ['empty sheet', `/jobs/${EMPTY.id}`],
  ['settings', '/settings'],
  ['system', '/system'],
  ['hand-over', `/jobs/${SAMPLE_ID}/hand-over`],
  ['shared job', '/shared/some-long-token-of-a-link'],
  ['ended link', '/shared/this-one-is-gone'],
  ['first account', '/sign-in#first=secret'],
  ['unknown', '/nothing/here'],
] as const;
const LOGIN = { user: null, needsLogin: true, needsFirst: true, role: null, csrf: 'token' };

describe.each([
  { width: 1280, scheme: 'light', other: 'dark', language: 'en-GB' },
  { width: 390, scheme: 'dark', other: 'light', language: 'de-DE' },
] as const)('at $width px, $scheme, $language', (view) => {
  test.each(PAGES)('%s', (_name, path) =>
    withPages(
      browser,
      async ({ server, page, faults, standing }) => {
        if (path.startsWith('/sign-in')) server.session = LOGIN;
        await page.goto(server.address + path);
        await standing();
        const { broken, looked } = await axe(page);
        expect(broken).toEqual([]);
        expect(looked).toBeGreaterThan(10);
        expect(await smallTargets(page)).toEqual([]);
        expect(await sticksOut(page)).toBeLessThanOrEqual(0);
        expect(await page.locator('html').getAttribute('lang')).toBe(view.language.slice(0, 2));
        // The same page in the other theme: only the colours differ.
        await page.emulateMedia({ colorScheme: view.other });
        expect((await axe(page, { rules: ['color-contrast'] })).broken).toEqual([]);
        expect(faults).toEqual([]);
      },
      view,
      JOBS,
    ),
  );

  test('dialogs', () =>
    withPages(
      browser,
      async ({ server, page }) => {
        const de = view.language === 'de-DE';
        const bothThemes = async (): Promise<void> => {
          // What lies behind an open dialog cannot be reached, and is looked at without one.
          const { broken, looked } = await axe(page, { within: ['dialog'] });
          expect(broken).toEqual([]);
          expect(looked).toBeGreaterThan(5);
          await page.emulateMedia({ colorScheme: view.other });
          expect((await axe(page, { within: ['dialog'], rules: ['color-contrast'] })).broken).toEqual([]);
          await page.emulateMedia({ colorScheme: view.scheme });
        };
        await page.goto(server.address);
        await page.getByRole('button', { name: de ? 'Neuer Auftrag' : 'New job' }).click();
        await bothThemes();
        await page.goto(`${server.address}/jobs/${SAMPLE_ID}`);
        for (const name of de
          ? ['Prüfung eintragen', 'Reparatur eintragen', 'Einheiten und Anzeige']
          : ['Record a check', 'Record a repair', 'Units and display']) {
          await page.getByRole('button', { name }).click();
          await bothThemes();
          expect(await smallTargets(page)).toEqual([]);
          await page.keyboard.press('Escape');
          await page.locator('dialog').waitFor({ state: 'detached' });
        }
      },
      { ...view, areWorkersSilent: true },
    ));
});

test.each(PAGES.slice(0, 4))('%s: nothing sticks out from 390 to 2560 px', (_name, path) =>
  withPages(
    browser,
    async ({ server, page, standing }) => {
      await page.goto(server.address + path);
      await standing();
      for (const width of [390, 600, 768, 1024, 1215, 1217, 1600, 2560]) {
        await page.setViewportSize({ width, height: 900 });
        // Charts and drawing take their new width a moment later.
        await expect.poll(() => sticksOut(page), { message: `at ${width} px` }).toBeLessThanOrEqual(0);
      }
    },
    {},
    JOBS,
  ),
);

test('the drawing stands beside the sheet when there is room, else after the finding', async () => {
  for (const [width, isBeside] of [
    [1280, true],
    [800, false],
  ] as const) {
    await withPages(
      browser,
      async ({ server, page }) => {
        await page.goto(`${server.address}/jobs/${SAMPLE_ID}`);
        const side = page.locator('aside.side');
        await side.waitFor();
        await until3(page);
        const [drawing, finding, next] = await Promise.all(
          [side, page.locator('#finding'), page.locator('#next-check')].map((part) => part.boundingBox()),
        );
        if (!drawing || !finding || !next) throw new Error('a part is missing');
        if (isBeside) expect(drawing.x).toBeGreaterThan(finding.x + finding.width - 1);
        else {
          expect(drawing.y).toBeGreaterThanOrEqual(finding.y + finding.height - 1);
          expect(next.y).toBeGreaterThanOrEqual(drawing.y + drawing.height - 1);
        }
      },
      { width },
    );
  }
});

/** The parts that are loaded late have come. */
const until3 = (page: import('playwright-core').Page): Promise<void> =>
  page.locator('#finding h3, #finding p').first().waitFor();

test('scripts of the first load are well under 300 kB packed', () => {
  const web = fileURLToPath(new URL('../../dist/web/', import.meta.url));
  const assets = readdirSync(join(web, 'assets'));
  const index = readFileSync(join(web, 'index.html'), 'utf8');
  const entry = /src="\/assets\/([^"]+\.js)"/.exec(index)?.[1];
  const first = new Set([entry, ...[...index.matchAll(/href="\/assets\/([^"]+\.js)"/g)].map((found) => found[1])]);
  // Loaded at once with the list: its page, what that imports, and the words of one language.
  const follow = (name: string): void => {
    first.add(name);
    const text = readFileSync(join(web, 'assets', name), 'utf8');
    for (const [, next = ''] of text.matchAll(/from\s?["']\.\/([^"']+\.js)["']/g)) if (!first.has(next)) follow(next);
  };
  for (const start of ['jobs-page', 'de-'])
    follow(assets.find((name) => name.startsWith(start) && name.endsWith('.js'))!);
  const bytes = [...first].map((name) => gzipSync(readFileSync(join(web, 'assets', name!))).length);
  expect(first.size).toBeGreaterThan(4);
  expect(bytes.reduce((sum, n) => sum + n, 0)).toBeLessThan(150_000);
});
