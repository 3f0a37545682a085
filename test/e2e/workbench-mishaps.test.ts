/** What goes wrong beside a car, on the real workbench: wrong files, a finding stopped, a reload, two windows, no server. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { HistoryEntry } from '../../src/jobs/record/job.ts';
import { dropFiles, EXAMPLES, LEAK_CSV, openedId, openWorkbench, until, type Workbench } from './workbench.ts';

let bench: Workbench;
const desk = mkdtempSync(join(tmpdir(), 'vaporwright-desk-'));
beforeAll(async () => {
  bench = await openWorkbench('--no-demo');
});
afterAll(async () => {
  await bench?.close();
  rmSync(desk, { recursive: true, force: true });
});

const put = (name: string, content: string | Uint8Array): string => {
  const path = join(desk, name);
  writeFileSync(path, content);
  return path;
};

/** A job of its own with a name, by the dialog of the list. */
async function newJob(page: Page, name: string): Promise<string> {
  await page.goto(bench.address);
  await page.getByRole('button', { name: 'New job' }).click();
  await page.getByLabel('What you call the car').fill(name);
  await page.keyboard.press('Enter');
  const id = await openedId(page);
  await page.locator('#complaint').waitFor();
  return id;
}

/** Charts are drawn when they come into sight. */
async function seeChart(page: Page): Promise<void> {
  await page.locator('.recording').first().scrollIntoViewIfNeeded();
  await page.locator('.recording canvas').first().waitFor();
}

describe('a wrong file', () => {
  const refusal = (page: Page) => page.locator('.recordings .message.bad');

  const lines = readFileSync(LEAK_CSV, 'utf8').trim().split('\n');
  const pressureAt = lines[0]!.split(',').indexOf('tank_pressure_pa');
  const withCell = (line: string, at: number, cell: string): string => line.split(',').with(at, cell).join(',');

  test('a file whose lines cannot be read is refused with its name, line and column', () =>
    bench.with({}, async ({ page }) => {
      const id = await newJob(page, 'Broken lines');
      // Words instead of pressures from line 502 on.
      const broken = lines.map((line, k) => (k > 500 ? withCell(line, pressureAt, 'oops') : line)).join('\n');
      await dropFiles(page, '.drop-place', [put('broken.csv', broken)]);
      await refusal(page).waitFor();
      const said = (await refusal(page).allInnerTexts()).join();
      expect(said).toContain('broken.csv was not taken in');
      expect(said).toMatch(new RegExp(`broken\\.csv, line 502, column ${pressureAt + 1}\\b`));
      expect(said).toContain('oops');
      expect((await bench.job(id)).recordings).toEqual([]);
    }));

  test('one broken cell is read around and named; without a pressure no finding is made, and why is said', () =>
    bench.with({}, async ({ page }) => {
      const id = await newJob(page, 'Broken cell');
      const oneCell = lines.map((line, k) => (k === 500 ? withCell(line, pressureAt, '12;oops') : line)).join('\n');
      await dropFiles(page, '.drop-place', [put('one-cell.csv', oneCell)]);
      const recording = page.getByRole('article', { name: 'one-cell.csv' });
      await recording.scrollIntoViewIfNeeded();
      await recording.locator('summary', { hasText: 'Quality' }).click();
      await recording
        .getByText('1 cell of column "tank_pressure_pa" cannot be read (first: line 501, "12;oops")')
        .waitFor();
      const without = lines.map((line) => line.split(',').toSpliced(pressureAt, 1).join(',')).join('\n');
      await dropFiles(page, '.drop-place', [put('no-pressure.csv', without)]);
      await until(
        () => bench.job(id),
        ({ recordings }) => recordings.length === 2,
      );
      await page.getByRole('radio', { name: /^Engine-vacuum draw/ }).check();
      await page.getByRole('button', { name: 'Make the finding' }).click();
      const failed = page.locator('#finding .message.bad');
      await failed.waitFor();
      const said = (await failed.allInnerTexts()).join();
      expect(said).toContain('no-pressure.csv');
      expect(said).toMatch(/Found: columns .*purge_duty_pct/);
      expect(said).toMatch(/Expected: a column with the pressure/);
      expect((await bench.job(id)).findings).toEqual([]);
    }));

  test('a picture chosen as a recording says what it is; dropped on the sheet it is kept as a photo', () =>
    bench.with({}, async ({ page }) => {
      const id = await newJob(page, 'A picture');
      const png = put('gauge.png', readFileSync(new URL('../../src/web/public/icon-192.png', import.meta.url)));
      await page.locator('.drop-place input[type=file]').first().setInputFiles(png);
      await refusal(page).waitFor();
      const said = (await refusal(page).allInnerTexts()).join();
      expect(said).toContain('gauge.png was not taken in');
      expect(said).toMatch(/Found: .*PNG/);
      expect(said).toContain('Export the recording as CSV');
      await page.getByRole('button', { name: 'Take this message away' }).click();
      await refusal(page).waitFor({ state: 'detached' });

      await dropFiles(page, '#notes', [png]);
      await page.locator('#files').getByText('gauge.png').first().waitFor();
      const { recordings, attachments } = await bench.job(id);
      expect(recordings).toEqual([]);
      expect(attachments).toMatchObject([{ fileName: 'gauge.png' }]);
    }));
});

test('a finding stopped leaves nothing behind, is made again, and its view resumes after a reload', () =>
  bench.with({}, async ({ page }) => {
    const id = await newJob(page, 'Stopped');
    // Two recordings at once: long enough to be stopped and to be looked at again.
    const estate = [LEAK_CSV, put('again.csv', readFileSync(LEAK_CSV))];
    await dropFiles(page, '.drop-place', estate);
    await until(
      () => bench.job(id),
      ({ recordings }) => recordings.length === estate.length,
    );
    await page.getByRole('radio', { name: /^Engine-vacuum draw/ }).check();
    const making = page.locator('#finding .making');
    await page.getByRole('button', { name: 'Make the finding' }).click();
    await making.getByRole('button', { name: 'Stop the finding' }).click();
    await page.getByText('The finding was stopped. Nothing was changed.').waitFor();
    expect((await bench.job(id)).findings).toEqual([]);

    await page.getByRole('button', { name: 'Make the finding' }).click();
    await making.waitFor();
    await page.reload();
    await making.waitFor();
    expect(await making.getByRole('progressbar').count()).toBe(1);
    expect((await bench.job(id)).findings).toEqual([]);
    await page.locator('#finding .finding-sentence').waitFor();
    expect((await bench.job(id)).findings).toHaveLength(1);
  }));

describe('two windows on one job', () => {
  const words = (page: Page) => page.getByLabel('In the customer’s own words');

  test('different parts written at the same time both stand; each window is told', () =>
    bench.with({}, async ({ page: a, context }) => {
      const id = await newJob(a, 'Two windows');
      const b = await context.newPage();
      await b.goto(a.url());
      await words(b).waitFor();
      await b.getByText('Name and papers').click();
      await Promise.all([words(a).fill('It smells.'), b.getByLabel('Registration').fill('AB 12')]);
      await until(
        () => bench.job(id),
        ({ complaint, vehicle }) => complaint.words === 'It smells.' && vehicle.registration === 'AB 12',
      );
      await until(
        () => words(b).inputValue(),
        (value) => value === 'It smells.',
      );
      await a.getByText(/Changed in another window: the car’s papers/).waitFor();
    }));

  test('one part written in both: nothing is overwritten, the second is told and chooses', () =>
    bench.with({}, async ({ page: a, context }) => {
      const id = await newJob(a, 'Two windows, one part');
      const b = await context.newPage();
      await b.goto(a.url());
      await words(b).waitFor();
      // The line between the windows is cut while both write: neither hears of the other before it sends.
      await context.route('**/events', (route) => route.abort());
      let release: () => void = () => undefined;
      const held = new Promise<void>((resolve) => {
        release = resolve;
      });
      await b.route(`**/api/v1/jobs/${id}`, async (route) => {
        if (route.request().method() === 'PATCH') await held;
        await route.continue();
      });
      await words(b).fill('Written in the second window.');
      await words(a).fill('Written in the first window.');
      await until(
        () => bench.job(id),
        ({ complaint }) => complaint.words === 'Written in the first window.',
      );
      release();
      const dialog = b.getByRole('dialog', { name: 'Changed in another window' });
      await dialog.waitFor();
      // The words on the difference come when they are needed.
      await dialog.getByText('first window').first().waitFor();
      expect((await dialog.allInnerTexts()).join()).toMatch(/second window[\s\S]*first window/);
      expect((await bench.job(id)).complaint.words).toBe('Written in the first window.');
      await dialog.getByRole('button', { name: 'Keep mine' }).click();
      await until(
        () => bench.job(id),
        ({ complaint }) => complaint.words === 'Written in the second window.',
      );
      // The first window's words stand in the history.
      const { history } = (await (await bench.get(`/jobs/${id}/history`)).json()) as { history: HistoryEntry[] };
      expect(JSON.stringify(history)).toContain('Written in the first window.');
      await until(
        () => words(a).inputValue(),
        (value) => value === 'Written in the second window.',
      );
    }));
});

test('with no server after the first load, what was opened is read, and what is missing is said', () =>
  bench.with({ serviceWorkers: 'allow' }, async ({ page, context }) => {
    const id = await newJob(page, 'Read far from the shop');
    // In a browser of its own: this one has never seen it.
    let other = '';
    await bench.with({}, async (elsewhere) => {
      other = await newJob(elsewhere.page, 'Never opened here');
    });
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    // From here on the service worker sees what is opened.
    await page.goto(`${bench.address}/jobs/${id}`);
    await dropFiles(page, '.drop-place', [join(EXAMPLES, 'demo-shop', 'hatchback-after.csv.gz')]);
    await seeChart(page);
    await page.reload();
    await seeChart(page);
    await page.goto(bench.address);
    await page.getByRole('link', { name: /Read far from the shop/ }).waitFor();

    await context.setOffline(true);
    await page.getByText('No connection to the server.').waitFor();
    await page.reload();
    await page.getByText('No connection to the server.').waitFor();
    expect(await page.getByRole('button', { name: 'New job' }).isDisabled()).toBe(true);
    await page.getByRole('link', { name: /Read far from the shop/ }).click();
    await page.getByRole('heading', { level: 1, name: 'Read far from the shop' }).waitFor();
    await seeChart(page);
    await page.getByText('What was opened before can be read', { exact: false }).waitFor();
    await page.goto(`${bench.address}/jobs/${other}`);
    await page.getByText('This was not opened on this device before', { exact: false }).waitFor();

    await context.setOffline(false);
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.getByRole('heading', { level: 1, name: 'Never opened here' }).waitFor();
    await page.getByText('No connection to the server.').waitFor({ state: 'detached' });
  }));
