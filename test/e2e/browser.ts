/** A headless Chromium for tests of the report, without any network of its own. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Browser, chromium, type Page } from 'playwright-core';
import { type FontBytes, PAGE_FONT_FILES } from '../../src/report/fonts.ts';
import { reportHtml } from '../../src/report/html.ts';
import type { Sheet } from '../../src/report/sheet.ts';

const require = createRequire(import.meta.url);
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export async function openBrowser(): Promise<Browser> {
  const setup: { findBrowser: () => string | undefined } = await import(
    new URL('../../scripts/setup.mjs', import.meta.url).href
  );
  const executablePath = setup.findBrowser();
  if (executablePath === undefined) throw new Error('no Chromium: run npm test, which installs it or says how');
  return chromium.launch({ executablePath, args: FLAGS });
}

export function pageText(sheet: Sheet): string {
  const read = (name: keyof FontBytes): Uint8Array => readFileSync(require.resolve(PAGE_FONT_FILES[name]));
  return reportHtml(sheet, {
    serif: read('serif'),
    serifStrong: read('serifStrong'),
    sans: read('sans'),
    sansStrong: read('sansStrong'),
  });
}

export interface View {
  readonly width: number;
  readonly scheme: 'light' | 'dark';
}

/** Opens the text as a page; every request that it makes is refused and remembered. */
export async function openPage(
  browser: Browser,
  html: string,
  { width, scheme }: View,
): Promise<{ page: Page; requests: string[] }> {
  const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme: scheme });
  const page = await context.newPage();
  const requests: string[] = [];
  await page.route('**/*', (route) => {
    requests.push(route.request().url());
    return route.abort();
  });
  await page.setContent(html, { waitUntil: 'load' });
  await page.evaluate(() => document.fonts.ready);
  return { page, requests };
}
