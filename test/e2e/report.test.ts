import { createRequire } from 'node:module';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser, openPage, pageText, type View } from './browser.ts';
import { sampleSheet } from './sample-sheet.ts';

const require = createRequire(import.meta.url);
const axePath = require.resolve('axe-core/axe.min.js');

let browser: Browser;
const html = pageText(sampleSheet);

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

const VIEWS: readonly View[] = [
  { width: 1280, scheme: 'light' },
  { width: 1280, scheme: 'dark' },
  { width: 390, scheme: 'light' },
  { width: 390, scheme: 'dark' },
];

interface AxeResult {
  readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[];
  readonly passes: readonly unknown[];
}

describe.each(VIEWS)('at $width px, $scheme', (view) => {
  test('no accessibility rule is broken', async () => {
    const { page } = await openPage(browser, html, view);
    await page.addScriptTag({ path: axePath });
    const result = (await page.evaluate('axe.run()')) as AxeResult;
    const broken = result.violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`,
    );
    expect(broken).toEqual([]);
    expect(result.passes.length).toBeGreaterThan(10);
    await page.context().close();
  });

  test('nothing sticks out sideways, nothing is asked of the network, the fonts inside are used', async () => {
    const { page, requests } = await openPage(browser, html, view);
    const measured = await page.evaluate(() => ({
      content: document.documentElement.scrollWidth,
      window: document.documentElement.clientWidth,
      fonts: [...document.fonts].filter((font) => font.status === 'loaded').map((font) => font.family),
      smallestLetters: Math.min(
        ...[...document.querySelectorAll('svg text')]
          .map((text) => text.getBoundingClientRect().height)
          .filter((height) => height > 0),
      ),
    }));
    expect(measured.content).toBeLessThanOrEqual(measured.window);
    expect(requests).toEqual([]);
    expect(measured.fonts.join()).toContain('Source Serif 4');
    expect(measured.fonts.join()).toContain('Atkinson Hyperlegible');
    expect(measured.smallestLetters).toBeGreaterThan(11);
    await page.context().close();
  });
});

test('one of the two drawings of a figure is shown, the fitting one', async () => {
  for (const [width, shown] of [
    [1280, '.wide'],
    [390, '.narrow'],
  ] as const) {
    const { page } = await openPage(browser, html, { width, scheme: 'light' });
    const visible = await page.evaluate(() =>
      ['.wide', '.narrow'].filter((name) => document.querySelector(`${name} svg`)!.getBoundingClientRect().height > 0),
    );
    expect(visible).toEqual([shown]);
    await page.context().close();
  }
});

test('on paper it is dark on light whatever the screen, with wide figures and unbroken rows', async () => {
  const { page } = await openPage(browser, html, { width: 390, scheme: 'dark' });
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  const look = await page.evaluate(() => ({
    ink: getComputedStyle(document.body).color,
    paper: getComputedStyle(document.querySelector('main')!).backgroundColor,
    wide: getComputedStyle(document.querySelector('.wide')!).display,
    row: getComputedStyle(document.querySelector('tr')!).breakInside,
  }));
  expect(look).toEqual({ ink: 'rgb(29, 31, 36)', paper: 'rgb(255, 255, 255)', wide: 'block', row: 'avoid' });
  const pdf = await page.pdf({ preferCSSPageSize: true });
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  await page.context().close();
});

test('the sentence comes first, before any picture', async () => {
  const { page } = await openPage(browser, html, { width: 1280, scheme: 'light' });
  const order = await page.evaluate(() => {
    const top = (selector: string): number => document.querySelector(selector)!.getBoundingClientRect().top;
    return [top('h1'), top('.finding'), top('.plain'), top('.wide svg')];
  });
  expect(order).toEqual([...order].sort((a, b) => a - b));
  await page.context().close();
});
