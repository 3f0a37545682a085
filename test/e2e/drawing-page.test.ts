/** The living drawing in a real browser: plays, answers to keys, takes faults, keeps its labels apart, rests when asked to. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { LAYOUTS } from '../../src/system/car.ts';
import { openBrowser } from './browser.ts';
import { answerRecordings, EXAMPLE } from './chart-answers.ts';
import { axe, withPages } from './pages-open.ts';
import { SAMPLE_ID, sampleJob } from './pages-sample-job.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

const ready = async (page: Page): Promise<void> => {
  await page.locator('.trace svg .own').waitFor();
  await page.locator('[data-state="purgeValve"]:not(:empty)').first().waitFor();
};

/** Pixels of the marks' canvas that are not clear. */
const inked = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('.drawing > canvas');
    const data = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
    let count = 0;
    for (let i = 3; i < data.length; i += 4) if (data[i] !== 0) count++;
    return count;
  });

/** Lines of labels that lie on each other, with the true font. */
const collisions = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const lines = [...document.querySelectorAll('.drawing .label tspan')]
      .map((el) => ({ text: el.textContent ?? '', box: el.getBoundingClientRect(), of: el.closest('.label') }))
      .filter(({ text }) => text !== '');
    const sheet = document.querySelector('.drawing > svg')!.getBoundingClientRect();
    const wrong: string[] = [];
    lines.forEach((a, i) => {
      if (a.box.left < sheet.left - 1 || a.box.right > sheet.right + 1) wrong.push(`${a.text} leaves the sheet`);
      for (const b of lines.slice(i + 1)) {
        const isApart =
          a.box.right <= b.box.left + 1 ||
          b.box.right <= a.box.left + 1 ||
          // The font's line box is taller than its letters.
          a.box.bottom <= b.box.top + 5 ||
          b.box.bottom <= a.box.top + 5;
        if (a.of !== b.of && !isApart) wrong.push(`${a.text} on ${b.text}`);
      }
    });
    return wrong;
  });

test('plays, pauses, steps from phase to phase, and says what happens', () =>
  withPages(browser, async ({ server, page, faults }) => {
    await page.goto(`${server.address}/system`);
    await ready(page);
    const clock = page.locator('.transport output');
    await expect.poll(() => inked(page)).toBeGreaterThan(50);
    const before = await clock.textContent();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect.poll(() => clock.textContent()).not.toBe(before);
    await page.getByRole('button', { name: 'Pause', exact: true }).click();
    const slider = page.getByRole('slider', { name: 'Time' });
    await slider.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('PageDown');
    await page.keyboard.press('PageDown');
    const words = page.locator('.now').last();
    await expect.poll(() => words.textContent()).toMatch(/settle/);
    await expect.poll(() => words.getAttribute('aria-live')).toBe('polite');
    expect(await words.textContent()).toMatch(/Purge and vent are shut\..*Air enters at the cap at \d/s);
    expect(faults).toEqual([]);
  }));

test('a part is chosen with the keyboard alone, and tells what it is', () =>
  withPages(browser, async ({ server, page }) => {
    await page.goto(`${server.address}/system`);
    await ready(page);
    await page.locator('.drawing').last().locator('[tabindex="0"]').focus();
    await page.keyboard.press('ArrowRight');
    const name = await page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    await page.keyboard.press('Enter');
    const part = name!.split(',')[0]!;
    await expect
      .poll(() =>
        page
          .locator('.part-words h3')
          .textContent()
          .then((t) => t?.toLowerCase()),
      )
      .toBe(part);
    await page.locator('.part-words .caution li').first().waitFor();
    expect(await page.locator('.part-words').textContent()).toMatch(/service information/);
  }));

test('a fault’s size redraws the trace, and a fault put in at a part is drawn there', () =>
  withPages(browser, async ({ server, page }) => {
    await page.goto(`${server.address}/system`);
    await ready(page);
    const line = page.locator('.trace svg .own');
    const small = await line.getAttribute('d');
    const size = page.locator('.fault-form input[type=range]');
    await size.focus();
    for (let i = 0; i < 30; i++) await page.keyboard.press('ArrowRight');
    await expect.poll(() => line.getAttribute('d')).not.toBe(small);
    await page.getByLabel('Parts of this system').selectOption('purgeValve');
    await page.getByRole('button', { name: 'purge valve seeps when shut' }).click();
    await expect
      .poll(() => page.locator('.drawing').last().locator('.label .warn').first().textContent())
      .toMatch(/seeps/);
    await expect
      .poll(() => page.locator('.drawing').last().locator('[data-state="purgeValve"]').textContent())
      .toBe('seeps');
    expect(await page.locator('.drawing').first().locator('.label .warn').count()).toBe(0);
  }));

describe.each([
  { width: 390, language: 'en-GB' },
  { width: 640, language: 'de-DE' },
] as const)('at $width px, $language', (view) => {
  test('no label lies on another in any layout, with the true font', () =>
    withPages(
      browser,
      async ({ server, page }) => {
        await page.goto(`${server.address}/system`);
        await ready(page);
        for (const layout of LAYOUTS) {
          await page.locator('.fault-form select').first().selectOption(layout);
          await expect.poll(() => page.locator('.drawing').getAttribute('data-layout')).toBe(layout);
          await ready(page);
          expect(await collisions(page), layout).toEqual([]);
        }
      },
      view,
    ));
});

test('without motion: arrows and numbers in place of marks, and nothing for axe to find with a close-up open', () =>
  withPages(
    browser,
    async ({ server, page }) => {
      await page.goto(`${server.address}/system`);
      await ready(page);
      await page.locator('.flow-arrow').first().waitFor();
      expect(await inked(page)).toBe(0);
      await expect.poll(() => page.locator('[data-state^="flow."]:not(:empty)').count()).toBeGreaterThan(0);
      await page.getByRole('button', { name: 'Close-up' }).click();
      await page.locator('.close-up svg').waitFor();
      expect((await axe(page)).broken).toEqual([]);
    },
    { width: 640, scheme: 'dark', reducedMotion: 'reduce' },
  ));

test('beside a job: the car’s own layout with what was found, at its likeliest place and median size', () =>
  withPages(browser, async ({ server, page, faults }) => {
    await page.goto(`${server.address}/jobs/${SAMPLE_ID}`);
    await ready(page);
    const panel = page.locator('.player');
    expect(await panel.textContent()).toMatch(/drawn at its likeliest place: cap and neck/);
    await expect
      .poll(() => panel.locator('[data-state="fault"], [data-state="fault-size"]').first().textContent())
      .toMatch(/0\.\d\d/);
    expect(faults).toEqual([]);
  }));

test('beside a job: its recording played again on its own day, with its trace under the played one', () =>
  withPages(browser, async ({ server, page }) => {
    await answerRecordings(page, () => sampleJob, EXAMPLE);
    await page.goto(`${server.address}/jobs/${SAMPLE_ID}`);
    await ready(page);
    const panel = page.locator('.player');
    // As the file's own columns say.
    await expect.poll(() => panel.textContent()).toMatch(/tank 43\s%\sfull.*outside 18\s°C.*air pressure 100\.9\skPa/);
    const recorded = page.locator('.trace svg .recorded');
    const own = page.locator('.trace svg .own');
    const [line, played] = [await recorded.getAttribute('d'), await own.getAttribute('d')];
    expect(line!.length).toBeGreaterThan(1000);
    await panel.locator('summary', { hasText: 'Another fault on it' }).click();
    const size = panel.locator('.fault-form input[type=range]');
    await size.focus();
    for (let i = 0; i < 20; i++) await page.keyboard.press('ArrowRight');
    await expect.poll(() => own.getAttribute('d')).not.toBe(played);
    await panel.getByRole('button', { name: 'Back to what was found' }).click();
    await expect.poll(() => own.getAttribute('d')).toBe(played);
    await panel.getByLabel('What is played').selectOption({ label: 'refuelling, on a mild day' });
    await expect.poll(() => panel.getByText('Fuel goes in.').count()).toBe(1);
    expect(await recorded.getAttribute('d')).toBe('');
  }));
