/** From a finding to a proven repair with the keyboard alone: cautions, a refused entry, the answer, the repair, the proof. */
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Job } from '../../src/jobs/record/job.ts';
import { DE } from '../../src/web/text/de.ts';
import { EN } from '../../src/web/text/en.ts';
import { openBrowser } from './browser.ts';
import { axe, until, withPages } from './pages-open.ts';
import { SAMPLE_ID, sampleJob } from './pages-sample-job.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

const [found] = sampleJob.findings;
if (found === undefined) throw new Error('the sample job has no finding');
const [recording] = sampleJob.recordings;
if (recording === undefined) throw new Error('the sample job has no recording');
const beforeSha = found.sheet.recordings[0]!.sha256;

/** The sample's recording is the one that its finding was made from; nothing was checked by hand yet. */
const START: Job = {
  ...sampleJob,
  checks: [],
  repairs: [],
  proof: null,
  recordings: [{ ...recording, sha256: beforeSha }],
};

/** As a second recording and its finding would leave the job: tight. */
function measuredAfter(job: Job): Job {
  const sha256 = 'c'.repeat(64);
  const id = '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b99';
  const { sheet } = found!;
  return {
    ...job,
    version: job.version + 1,
    recordings: [...job.recordings, { ...recording!, id, label: 'After', sha256, taken: 'after-repair' }],
    findings: [
      ...job.findings,
      {
        ...found!,
        id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b98',
        madeAt: new Date().toISOString(),
        sheet: {
          ...sheet,
          recordings: sheet.recordings.map((one) => ({ ...one, sha256 })),
          finding: {
            ...sheet.finding,
            diameterMm: { median: 0.1, lo90: 0.05, hi90: 0.17 },
            exceeds: { mm0_5: 0.0001, mm1_0: 0 },
          },
        },
      },
    ],
  };
}

/** Tab until the thing has the focus: what cannot be reached so cannot be used without a mouse. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let k = 0; k < 400; k++) {
    if ((await target.count()) === 1 && (await target.evaluate((element) => element === document.activeElement)))
      return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`not reached by Tab: ${String(target)}`);
}
const press = async (page: Page, target: Locator): Promise<void> => {
  await tabTo(page, target);
  await page.keyboard.press('Enter');
};
const write = async (page: Page, target: Locator, text: string): Promise<void> => {
  await tabTo(page, target);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
};

const WORDS = EN.checks.next;

/** Ticks every caution of the step; no step shows before the last one. */
async function acknowledgeAll(page: Page, step: Locator): Promise<void> {
  const ticks = step.getByRole('checkbox', { name: WORDS.acknowledge });
  await ticks.first().waitFor();
  const count = await ticks.count();
  expect(count).toBeGreaterThan(1);
  for (let k = 0; k < count; k++) {
    expect(await step.locator('ol').count()).toBe(0);
    await tabTo(page, ticks.nth(k));
    await page.keyboard.press('Space');
  }
  await step.locator('ol li').first().waitFor();
}

describe('next check and proof', () => {
  test('from finding to proven repair, keyboard only', () =>
    withPages(
      browser,
      async ({ server, page, faults }) => {
        await page.goto(`${server.address}/jobs/${SAMPLE_ID}`);
        const next = page.locator('#next-check');
        const step = next.locator('.next-step');
        // Planned by itself, with what it can at most be worse by and the reflex it is better than.
        await next.getByText(/^No plan (can be|is)/).waitFor();
        await next.getByText(WORDS.whyLater).waitFor({ state: 'detached' });
        const recommended = await step.locator('.finding-sentence').textContent();
        expect(recommended).not.toBe(WORDS.planning);
        expect(await next.locator('.tree li').count()).toBeGreaterThan(2);

        // Another check by hand: the flow into the whole system, numbers with units.
        const name = EN.checks.catalogue().checks.T20!.name;
        await press(page, next.locator('summary', { hasText: WORDS.others }));
        await press(page, next.getByRole('button', { name, exact: true }));
        await step.getByText(WORDS.chosenTitle).waitFor();
        await acknowledgeAll(page, step);

        const field = (id: string): Locator => step.locator(`input[name="${id}"]`);
        await write(page, field('flow'), '0.46 kPa');
        await write(page, field('pressure'), '-10 inH2O');
        await press(page, step.getByRole('button', { name: WORDS.record }));
        await step.getByText(/is a unit of pressure; expected a unit of volume flow/).waitFor();
        await step.getByText(/is the sign right\?/).waitFor();
        expect(server.jobs.get(SAMPLE_ID)?.checks).toEqual([]);
        // The first field that was refused has the focus and is tied to its words.
        expect(await field('flow').evaluate((element) => element === document.activeElement)).toBe(true);
        expect(await field('flow').getAttribute('aria-invalid')).toBe('true');

        await page.keyboard.press('Control+a');
        await page.keyboard.type('0.6 L/min');
        await write(page, field('pressure'), '10 inH2O');
        // What the instrument shows is told as a size at once.
        await step.getByText(WORDS.meant).waitFor();
        await step.getByText(/^Whole system: 0\.5\d\smm \(/).waitFor();
        const expected = next.getByText(/^From here to the end of the plan/);
        const expectedBefore = await expected.textContent();
        await press(page, step.getByRole('button', { name: WORDS.record }));
        const checks = await until(
          () => server.jobs.get(SAMPLE_ID)?.checks ?? [],
          (all) => all.length === 1,
        );
        expect(checks[0]).toMatchObject({
          checkId: 'T20',
          answer: { numbers: { flow: '0.6 L/min', pressure: '10 inH2O' } },
        });
        // The plan is made anew at once: the rig stands now, which saves what comes.
        await next.getByText(WORDS.weighedBeside('T20')).waitFor();
        await until(
          () => expected.textContent(),
          (text) => text !== expectedBefore,
        );

        await press(page, page.getByRole('button', { name: EN.job.repair.record }));
        const dialog = page.getByRole('dialog');
        await write(page, dialog.getByLabel(EN.job.repair.what), 'Seal at the neck replaced');
        await press(page, dialog.getByRole('button', { name: EN.common.save }));
        const repaired = await until(
          () => server.jobs.get(SAMPLE_ID)!,
          (job) => job.repairs.length === 1,
        );
        // Without a measurement after it nothing is proven, and it says what is missing.
        await page
          .locator('#proof .proof-numbers')
          .getByText(/^Not proven/)
          .waitFor();
        await page
          .locator('#proof')
          .getByText(/has not been measured since the repair/)
          .waitFor();

        // The sheet asks for the verification, and not for the same repair again.
        const again = EN.checks.catalogue().checks.T37!.name;
        await step.getByText(WORDS.verify(again), { exact: true }).waitFor();
        await acknowledgeAll(page, step);
        await write(page, field('flow'), '0.01 L/min');
        await write(page, field('pressure'), '10 inH2O');
        await press(page, step.getByRole('button', { name: WORDS.record }));
        await step.getByText(WORDS.verified, { exact: true }).waitFor();
        expect(repaired.repairs[0]?.what).toBe('Seal at the neck replaced');
        const proof = page.locator('#proof');
        await proof.getByText('The repair held.', { exact: true }).waitFor();
        await press(page, proof.getByRole('button', { name: EN.checks.proof.take }));
        const proven = await until(
          () => server.jobs.get(SAMPLE_ID)?.proof,
          (made) => made !== null && made !== undefined,
        );
        expect(proven).toMatchObject({ verdict: 'held', before: [recording.id] });
        // Measured by hand: no recording stands for it.
        expect(proven?.after).toEqual([]);
        // The figures are worked out wherever they are shown; the record keeps the verdict and what it was judged against.
        expect(proven?.limit?.label).toBe('0.020 in');
        expect(proven?.words).toBe('');
        expect(faults).toEqual([]);
      },
      {},
      [START],
    ));

  test('axe finds nothing in both themes; German is complete', () =>
    withPages(
      browser,
      async ({ server, page }) => {
        await page.goto(`${server.address}/jobs/${SAMPLE_ID}`);
        await page.locator('#next-check .tree').waitFor();
        await page.getByText(DE.checks.next.title, { exact: true }).waitFor();
        await page.getByText(DE.checks.proof.worked, { exact: true }).waitFor();
        await page.locator('#next-check summary', { hasText: DE.checks.next.others }).click();
        // Any figure can be found, changed with its mark and set back, not only those of the step that is recommended.
        const next = page.locator('#next-check');
        await next.locator('summary', { hasText: DE.checks.next.figures }).click();
        await next.getByLabel(DE.checks.next.figuresOf).selectOption('repair.tank');
        const parts = next.getByLabel(new RegExp(`^${DE.checks.next.figureNames.parts}`));
        await parts.fill('9');
        await parts.blur();
        await next.getByText(DE.checks.next.ownFigures(1), { exact: true }).waitFor();
        const reset = next.getByRole('button', { name: DE.checks.next.resetFigure(DE.checks.next.figureNames.parts!) });
        await reset.click();
        await next.getByText(DE.checks.next.ownFigures(1), { exact: true }).waitFor({ state: 'detached' });
        const { broken, looked } = await axe(page);
        expect(broken).toEqual([]);
        expect(looked).toBeGreaterThan(10);
        // In the other theme only the colours differ.
        await page.emulateMedia({ colorScheme: 'dark' });
        expect((await axe(page, { rules: ['color-contrast'] })).broken).toEqual([]);
      },
      { scheme: 'light', language: 'de-DE' },
      [measuredAfter({ ...START, repairs: sampleJob.repairs })],
    ));
});
