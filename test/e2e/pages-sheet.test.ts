/** Writing on the sheet: saved as you go, undone, never lost to another window, readable without a server. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Job } from '../../src/jobs/record/job.ts';
import { DE } from '../../src/web/text/de.ts';
import { EN } from '../../src/web/text/en.ts';
import { openBrowser } from './browser.ts';
import { startFakeServer } from './pages-fake-server.ts';
import { type Opened, until, type View, withPages } from './pages-open.ts';
import { emptyJob, SAMPLE_ID, sampleJob } from './pages-sample-job.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

const RECORDING = fileURLToPath(new URL('../../examples/leak-self-test.csv', import.meta.url));
const CAR = fileURLToPath(new URL('../../examples/invented-estate.car.json', import.meta.url));
/** Neither the drawing nor the next check is looked at here. */
const withSheet = (
  run: (opened: Opened) => Promise<void>,
  view: View = {},
  jobs?: readonly Job[],
  serviceWorkers?: 'allow' | 'block',
): Promise<void> => withPages(browser, run, { ...view, areWorkersSilent: true }, jobs, serviceWorkers);
const sheetOf = async (page: Page, address: string): Promise<void> => {
  await page.goto(`${address}/jobs/${SAMPLE_ID}`);
  await page.locator('#complaint').waitFor();
};
const ownWords = (page: Page) => page.getByLabel('In the customer’s own words');

async function drop(page: Page, path: string, type = 'text/csv'): Promise<void> {
  const data = await page.evaluateHandle(
    ([text, name, mime]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text!], name!, { type: mime! }));
      return transfer;
    },
    [readFileSync(path, 'utf8'), path.split('/').at(-1)!, type],
  );
  await page.dispatchEvent('main', 'dragover', { dataTransfer: data });
  await page.dispatchEvent('main', 'drop', { dataTransfer: data });
}

describe('saved as you go', () => {
  test('what is written is there after loading anew, and undone by Ctrl+Z outside fields only', () =>
    withSheet(async ({ server, page }) => {
      await sheetOf(page, server.address);
      const words = (): string | undefined => server.jobs.get(SAMPLE_ID)?.complaint.words;
      await ownWords(page).fill('It smells when full.');
      await until(words, (now) => now === 'It smells when full.');
      await page.getByText('Saved', { exact: true }).waitFor();
      await page.reload();
      await until(
        () => ownWords(page).inputValue(),
        (value) => value === 'It smells when full.',
      );
      const version = server.jobs.get(SAMPLE_ID)?.version;
      await ownWords(page).focus();
      await page.keyboard.press('Control+z');
      await page.waitForTimeout(300);
      expect(server.jobs.get(SAMPLE_ID)?.version).toBe(version);
      await page.locator('#sheet').focus();
      await page.keyboard.press('Control+z');
      await until(words, (now) => now === sampleJob.complaint.words);
      await until(
        () => ownWords(page).inputValue(),
        (value) => value === sampleJob.complaint.words,
      );
    }));

  test('a check by hand reaches the job with what it speaks for and against', () =>
    withSheet(async ({ server, page }) => {
      await sheetOf(page, server.address);
      await page.getByRole('button', { name: 'Record a check' }).click();
      const dialog = page.getByRole('dialog');
      await dialog.getByRole('button', { name: 'Save' }).click();
      await dialog.getByText('Say what was done.').waitFor();
      await dialog.getByLabel('What was done, and where').fill('Cap swapped for a known good one');
      await dialog.getByLabel('What was seen or measured').fill('No change');
      await dialog.getByLabel('Measured value').fill('0,61');
      await dialog.getByLabel('Unit', { exact: true }).fill('mm');
      await dialog.getByLabel('Speaks against').selectOption('leak');
      await dialog.getByLabel('Speaks for').selectOption('vent_leak');
      await dialog.getByRole('radio', { name: /as good as proof/ }).check();
      await dialog.getByRole('button', { name: 'Save' }).click();
      const checks = await until(
        () => server.jobs.get(SAMPLE_ID)?.checks ?? [],
        (all) => all.length === 2,
      );
      expect(checks[1]).toMatchObject({
        what: 'Cap swapped for a known good one',
        measured: { value: 0.61, unit: 'mm' },
        speaksFor: ['vent_leak'],
        speaksAgainst: ['leak'],
        strength: 'strong',
      });
    }));

  test('units change everywhere at once and what is typed in them is kept in SI', () =>
    withSheet(async ({ server, page }) => {
      await sheetOf(page, server.address);
      await page.getByRole('button', { name: 'Units and display' }).click();
      await page.getByRole('radio', { name: 'inH₂O' }).check();
      await page.getByRole('radio', { name: 'gal' }).check();
      await page.keyboard.press('Escape');
      const facts = page.locator('#car .facts');
      expect((await facts.allInnerTexts()).join()).toContain('inH₂O');
      expect((await facts.allInnerTexts()).join()).not.toContain('kPa');
      await page.getByText('Volumes, sensor and fuel').click();
      await page.getByLabel('Tank, brim full').fill('15');
      // 1 US gallon is 231 cubic inches of 25.4 mm by definition.
      const volume = 15 * 231 * 0.0254 ** 3;
      await until(
        () => server.jobs.get(SAMPLE_ID)?.car?.tankVolumeM3 ?? 0,
        (m3) => Math.abs(m3 - volume) < 1e-9,
      );
      await page.getByLabel('Tank, brim full').fill('');
      const car = await until(
        () => server.jobs.get(SAMPLE_ID)?.car,
        (now) => now != null && !('tankVolumeM3' in now),
      );
      expect(car?.layout).toBe(sampleJob.car?.layout);
      expect((await facts.allInnerTexts()).join()).toContain('not known');
    }));
});

describe('two windows on one job', () => {
  const both = (run: (a: Page, b: Page, job: () => Job) => Promise<void>): Promise<void> =>
    withSheet(async ({ server, context, page }) => {
      const other = await context.newPage();
      await sheetOf(page, server.address);
      await sheetOf(other, server.address);
      await run(page, other, () => server.jobs.get(SAMPLE_ID)!);
    });

  test('a change in the other part is shown at once', () =>
    both(async (a, b) => {
      await ownWords(a).fill('From the first window.');
      await until(
        () => ownWords(b).inputValue(),
        (value) => value === 'From the first window.',
      );
      await b.getByText(/Changed in another window: complaint/).waitFor();
    }));

  test.each([
    ['Keep mine', 'Mine.'],
    ['Take the other', 'Theirs.'],
  ] as const)('one part written in both: the second is told and chooses "%s"', (choice, stands) =>
    withSheet(async ({ server, page }) => {
      await sheetOf(page, server.address);
      // The other window's change reaches the server while this one is still writing.
      await ownWords(page).fill('Mine.');
      server.changeElsewhere(SAMPLE_ID, 'complaint', { words: 'Theirs.', types: ['smell'] });
      const dialog = page.getByRole('dialog', { name: 'Changed in another window' });
      await dialog.waitFor();
      expect((await dialog.allInnerTexts()).join()).toMatch(/Mine\.[\s\S]*Theirs\./);
      expect(server.jobs.get(SAMPLE_ID)?.complaint.words).toBe('Theirs.');
      await page.keyboard.press('Escape');
      expect(await dialog.isVisible()).toBe(true);
      await dialog.getByRole('button', { name: choice }).click();
      await dialog.waitFor({ state: 'detached' });
      await until(
        () => server.jobs.get(SAMPLE_ID)?.complaint.words,
        (words) => words === stands,
      );
      expect(await ownWords(page).inputValue()).toBe(stands);
    }),
  );
});

describe('files', () => {
  test('a recording dropped on an empty list is on its sheet, with the finding one choice and one button away', () =>
    withSheet(
      async ({ server, page }) => {
        await page.goto(server.address);
        await page.getByRole('heading', { name: 'No jobs yet' }).waitFor();
        await drop(page, RECORDING);
        await page.waitForURL('**/jobs/*');
        const job = (): Job => [...server.jobs.values()][0]!;
        await until(job, (now) => now?.recordings.length === 1);
        await page.getByRole('radio', { name: /Engine-vacuum draw/ }).click();
        await until(job, (now) => now.car?.layout === 'engine-vacuum');
        await until(
          () => page.getByRole('button', { name: 'Make the finding' }).isEnabled(),
          (isOn) => isOn,
        );
      },
      {},
      [],
    ));

  test('a car file dropped on the sheet fills the car in', () =>
    withSheet(
      async ({ server, page }) => {
        await sheetOf(page, server.address);
        await drop(page, CAR, 'application/json');
        await until(
          () => server.jobs.get(SAMPLE_ID)?.car?.label,
          (label) => label === 'Blue estate, invented car no. 7',
        );
      },
      {},
      [emptyJob(SAMPLE_ID, 1)],
    ));

  test('the demo goes with one click', () =>
    withSheet(async ({ server, page }) => {
      await page.goto(server.address);
      await page.getByRole('link', { name: /Grey saloon/ }).waitFor();
      await page.getByRole('button', { name: 'Remove the demo' }).click();
      await page.getByRole('link', { name: /Grey saloon/ }).waitFor({ state: 'detached' });
      expect([...server.jobs.values()].some((job) => job.demo)).toBe(false);
    }));

  test('search and filter', () =>
    withSheet(async ({ server, page }) => {
      await page.goto(server.address);
      const rows = page.locator('.jobs-table tbody tr');
      await until(
        () => rows.count(),
        (count) => count === 2,
      );
      await page.getByLabel('Search').fill('nozzle estate');
      await until(
        () => rows.allInnerTexts(),
        (all) => all.length === 1 && all[0]!.includes('Blue estate'),
      );
      await page.getByLabel('Search').fill('');
      await page.getByLabel('Show closed jobs').check();
      await until(
        () => rows.count(),
        (count) => count === 3,
      );
      await page.getByLabel('Waits for').selectOption('recording');
      await until(
        () => rows.allInnerTexts(),
        (all) => all.length === 1 && all[0]!.includes('Blue estate'),
      );
    }));
});

test('a new job with the keyboard alone, from the first Tab to a check recorded', () =>
  withSheet(
    async ({ server, page }) => {
      await page.goto(server.address);
      await page.getByRole('heading', { level: 1 }).waitFor();
      const focused = (): Promise<string> =>
        page.evaluate(() => {
          const at = document.activeElement as HTMLElement;
          if (at === document.body) return '';
          const labels = 'labels' in at ? [...((at as HTMLInputElement).labels ?? [])] : [];
          return [...labels, at]
            .map((part) => `${part.textContent} ${part.getAttribute('aria-label') ?? ''}`)
            .join(' ');
        });
      const tabTo = async (name: string, most = 60): Promise<void> => {
        for (let i = 0; i < most; i++) {
          if ((await focused()).includes(name)) return;
          await page.keyboard.press('Tab');
          const isSeen = await page.evaluate(() => {
            const at = document.activeElement as HTMLElement;
            return at === document.body || getComputedStyle(at).outlineStyle !== 'none' || at.matches('[type=file]');
          });
          expect(isSeen, `focus on "${await focused()}" is seen`).toBe(true);
        }
        throw new Error(`"${name}" is not reached by Tab`);
      };
      await page.keyboard.press('Tab');
      expect(await focused()).toContain('Skip to the sheet');
      await tabTo('New job');
      await page.keyboard.press('Enter');
      await page.getByRole('dialog').waitFor();
      expect(await focused()).toContain('What you call the car');
      await page.keyboard.type('Green van');
      await tabTo('Codes');
      await page.keyboard.type('p0456 p0442');
      await page.keyboard.press('Enter');
      await page.waitForURL('**/jobs/*');
      const job = (): Job => [...server.jobs.values()][0]!;
      expect(job()).toMatchObject({
        vehicle: { name: 'Green van' },
        codes: [
          { code: 'P0456', status: 'stored' },
          { code: 'P0442', status: 'stored' },
        ],
      });
      await page.locator('#car').waitFor();
      await tabTo('Engine-vacuum draw');
      // Past the second one to the third: the choice stays until it is closed.
      for (const layout of ['engine-off', 'pump-reference']) {
        await page.keyboard.press('ArrowDown');
        await until(job, (now) => now.car?.layout === layout);
      }
      await tabTo('Record a check', 150);
      await page.keyboard.press('Enter');
      await page.keyboard.type('Looked at the cap');
      await page.keyboard.press('Tab');
      await page.keyboard.type('Seal cracked');
      await tabTo('Save');
      await page.keyboard.press('Enter');
      await until(job, (now) => now.checks.length === 1);
      // Focus is back where the dialog was opened.
      await until(focused, (name) => name.includes('Record a check'));
    },
    {},
    [],
  ));

describe('without a server', () => {
  test('an opened job is read after loading anew; what is written goes out when the server is back', async () => {
    await withSheet(
      async ({ server, page, context }) => {
        await page.goto(server.address);
        await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
        // From here on the service worker answers.
        await page.reload();
        await page.getByRole('link', { name: /Grey saloon/ }).click();
        await page.locator('#complaint').waitFor();
        await page.waitForTimeout(800);
        const port = Number(new URL(server.address).port);
        const jobs = [...server.jobs.values()];
        await server.stop();
        await page.reload();
        await until(
          () => ownWords(page).inputValue(),
          (value) => value === sampleJob.complaint.words,
        );
        await page.getByText('No connection to the server.').waitFor();
        await ownWords(page).fill('Written without a server.');
        await page.getByText('Kept here until the server is back').waitFor();
        await page.reload();
        await until(
          () => ownWords(page).inputValue(),
          (value) => value === 'Written without a server.',
        );
        const second = await context.newPage();
        await second.goto(server.address);
        await second.getByRole('link', { name: /Grey saloon/ }).waitFor();
        await second.close();
        const back = await startFakeServer(jobs, { port, areWorkersSilent: true });
        try {
          await until(
            () => back.jobs.get(SAMPLE_ID)?.complaint.words,
            (words) => words === 'Written without a server.',
          );
          await page.getByText('No connection to the server.').waitFor({ state: 'detached' });
        } finally {
          await back.stop();
        }
      },
      {},
      undefined,
      'allow',
    );
  });
});

/** Every whole text of a catalogue. */
const textsOf = (part: unknown): string[] =>
  typeof part === 'string'
    ? [part]
    : typeof part === 'object' && part !== null
      ? Object.values(part).flatMap(textsOf)
      : [];

test('in German the sheet has no English words of ours', () =>
  withPages(
    browser,
    async ({ server, page }) => {
      await page.goto(`${server.address}/jobs/${SAMPLE_ID}`);
      await page.locator('#complaint > h2').waitFor();
      await page.locator('#finding button').first().waitFor();
      const heads = await page.locator('.section > h2').allInnerTexts();
      expect(heads.map((head) => head.replace(/\u00ad/g, ''))).toEqual([
        'Beanstandung',
        'Fahrzeug',
        'Aufzeichnungen',
        'Befund',
        'Nächste Prüfung',
        'Reparatur',
        'Nachweis',
        'Eigendiagnose und Abgasprüfung',
        'Übergabe',
        'Fotos und Dateien',
        'Notizen',
        'Verlauf',
      ]);
      const text = (await page.locator('main').allInnerTexts()).join();
      const english = textsOf(EN).filter((words) => words.length > 8 && !textsOf(DE).includes(words));
      expect(english.length).toBeGreaterThan(200);
      expect(english.filter((words) => text.includes(words))).toEqual([]);
    },
    { language: 'de-DE' },
    // Without what people typed and read from the car, which stays in their language.
    [{ ...sampleJob, findings: [], codes: [], recordings: [] }],
  ));
