import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { type ChartView, eventually, type OpenChart, openChart, wordsOf } from './chart-page.ts';
import { axe, sticksOut } from './pages-open.ts';
import { SAMPLE_ID, sampleJob } from './pages-sample-job.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

async function withFinding(
  run: (chart: OpenChart) => Promise<void>,
  view: ChartView = {},
  job = sampleJob,
): Promise<void> {
  const chart = await openChart(browser, { ...view, areWorkersSilent: true }, job);
  try {
    await chart.page.locator('#finding .finding').waitFor();
    await chart.page.locator('#finding').scrollIntoViewIfNeeded();
    await run(chart);
  } finally {
    await chart.close();
  }
}

describe('finding', () => {
  test('the sentence comes first; size and limits carry interval, convention and mark', () =>
    withFinding(async ({ page }) => {
      const finding = page.locator('#finding');
      const words = await wordsOf(finding);
      expect(words.indexOf('0.62')).toBeLessThan(words.indexOf('What could it be'));
      expect(words).toMatch(/0\.62\smm \(0\.56\sto\s0\.69\)/);
      expect(words).toContain('discharge coefficient 0.61');
      const scale = finding.locator('.size-scale');
      expect(await scale.getAttribute('aria-label')).toMatch(/0\.020 in.*from memory.*0\.040 in.*from memory/);
      // The interval stands between the limits that it lies between.
      const box = async (selector: string) => (await scale.locator(selector).first().boundingBox())!;
      const interval = await box('.interval');
      const lines = await Promise.all((await scale.locator('.limit').all()).map((line) => line.boundingBox()));
      const [low, high] = lines.map((line) => line!.x).sort((a, b) => a - b);
      expect(low).toBeLessThan(interval.x);
      expect(high).toBeGreaterThan(interval.x + interval.width);
      // No line runs through a name, and no name stands in another one.
      const names = await Promise.all((await scale.locator('.limit-name').all()).map((name) => name.boundingBox()));
      expect(names[0]!.y + names[0]!.height).toBeLessThanOrEqual(names[1]!.y);
    }));

  test('follows the units everywhere', () =>
    withFinding(async ({ page }) => {
      await page.evaluate(
        `localStorage.setItem('vaporwright.units', JSON.stringify({ pressure: 'inH2O', length: 'in', temperature: '°F', volume: 'gal' }))`,
      );
      await page.reload();
      await page.locator('#finding .finding').waitFor();
      // 0.62 mm is 0.0244 in.
      await eventually(
        () => wordsOf(page.locator('#finding')),
        (words) => /0\.024\sin \(0\.022\sto\s0\.027\)/.test(words),
      );
      await page.locator('#finding .cursor-values').waitFor();
      expect(await wordsOf(page.locator('#finding .cursor-values'))).toContain('inH₂O');
    }));

  test('the trace of any cause drawn can be chosen, and its misfit is said', () =>
    withFinding(async ({ page }) => {
      const traces = page.locator('.traces');
      await traces.locator('canvas').waitFor();
      const before = await wordsOf(traces);
      expect(before).toMatch(/differs from the record by/);
      const choices = traces.getByRole('radio');
      expect(await choices.count()).toBeGreaterThan(1);
      await choices.last().check();
      await eventually(
        () => wordsOf(traces),
        (words) => words.includes('With “no fault seen”') || words.split('differs')[0] !== before.split('differs')[0],
      );
    }));

  test('evidence is said in words beside its length', () =>
    withFinding(async ({ page }) => {
      const rows = page.locator('.evidence-rows');
      expect(await wordsOf(rows)).toContain('strongly for');
      expect(await wordsOf(rows)).toContain('weakly against');
    }));

  test('one that the end of the program interrupted says so, and is started again as it was asked for', () =>
    withFinding(async ({ page }) => {
      const work = {
        id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2c77',
        kind: 'finding',
        jobId: SAMPLE_ID,
        state: 'interrupted',
        fraction: 0,
        words: 'interrupted',
        startedAt: '2026-11-25T09:20:00.000Z',
        taken: 'before-repair',
      };
      await page.route('**/jobs/*/work', (route) => route.fulfill({ json: { work: [work] } }));
      await page.reload();
      const finding = page.locator('#finding');
      await finding.getByText('The finding was interrupted').waitFor();
      const running = { ...work, id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2c78', state: 'running', fraction: 0.2 };
      await page.route('**/jobs/*/findings', (route) => route.fulfill({ status: 202, json: { work: running } }));
      const asked = page.waitForRequest(
        (request) => request.method() === 'POST' && request.url().endsWith('/findings'),
      );
      await finding.getByRole('button', { name: 'Start it again' }).click();
      expect((await asked).postDataJSON()).toEqual({ taken: 'before-repair' });
      await finding.locator('progress').waitFor();
      expect(await finding.getByText('The finding was interrupted').count()).toBe(0);
    }));

  test('one that runs shows how far it is and can be stopped; a newer job is outdated and can be made anew', () => {
    const outdated = { ...sampleJob, findings: sampleJob.findings.map((each) => ({ ...each, outdated: true })) };
    return withFinding(
      async ({ page }) => {
        expect(await wordsOf(page.locator('#finding'))).toContain('Outdated');
        const work = {
          id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b99',
          kind: 'finding',
          jobId: SAMPLE_ID,
          state: 'running',
          fraction: 0.4,
          words: 'trying: leak to the open air',
          startedAt: '2026-11-25T09:20:00.000Z',
        };
        await page.route('**/jobs/*/findings', (route) => route.fulfill({ status: 202, json: { work } }));
        await page.getByRole('button', { name: 'Make it anew' }).click();
        const making = page.locator('.making');
        await making.waitFor();
        expect(await wordsOf(making)).toMatch(/40\s%/);
        const stopped = page.waitForRequest(
          (request) => request.method() === 'DELETE' && request.url().includes('/work/'),
        );
        await page.route('**/work/*', (route) => route.fulfill({ json: { work: { ...work, state: 'cancelled' } } }));
        await making.getByRole('button', { name: 'Stop the finding' }).click();
        await stopped;
      },
      {},
      outdated,
    );
  });

  test('without car or recording it says what is missing', () =>
    withFinding(
      async ({ page }) => {
        expect(await wordsOf(page.locator('#finding'))).toContain('needs a recording');
        expect(await page.getByRole('button', { name: 'Make the finding' }).isDisabled()).toBe(true);
      },
      {},
      { ...sampleJob, findings: [], recordings: [], proof: null },
    ));

  test('German has no sentence left in English, those of the finding itself among them', () => {
    // As the finding words them; the sample's own are invented.
    const reasons = [
      { kind: 'for', text: 'The hold fits a leak and not no fault (odds over 1000 to 1 from this phase).' },
      { kind: 'limits', text: 'Not excluded by these recordings: a vent valve that does not seal (31 %).' },
      {
        kind: 'next-recording',
        text: 'The same test with the vent hose plugged at the canister parts the vent valve from every other hole. Follow the service information; no sparks near the open hose.',
      },
    ] as const;
    const findings = sampleJob.findings.map((each) => ({
      ...each,
      sheet: { ...each.sheet, finding: { ...each.sheet.finding, reasons, warnings: [] } },
    }));
    return withFinding(
      async ({ page }) => {
        await page.locator('.traces canvas').waitFor();
        const words = await wordsOf(page.locator('#finding .finding'));
        expect(words).toContain('Leck ins Freie');
        expect(words).toContain('Durchflusszahl 0,61');
        expect(words).toContain('Chancen über 1000 zu 1');
        expect(words.match(/\b(the|with|which|recorded|probability|record|not)\b/gi) ?? []).toEqual([]);
        await page.locator('.recording canvas').waitFor();
        await page.evaluate(
          'document.querySelectorAll("#recordings details").forEach((each) => { each.open = true; })',
        );
        await page.locator('.mapping-columns').waitFor();
        const recordings = await wordsOf(page.locator('#recordings .recordings'));
        expect(recordings.match(/\b(the|with|which|recorded|drag|values|samples|header|column)\b/gi) ?? []).toEqual([]);
      },
      { language: 'de' },
      { ...sampleJob, findings },
    );
  });
});

describe.each([
  { width: 1280, scheme: 'light', other: 'dark' },
  { width: 390, scheme: 'dark', other: 'light' },
] as const)('recordings and finding at $width px, $scheme, then $other', (view) => {
  test('break no accessibility rule, opened or closed, and stick out nowhere', () =>
    withFinding(async ({ page }) => {
      await page.locator('.recording canvas').waitFor();
      await page.locator('.traces canvas').waitFor();
      await page.evaluate(
        'document.querySelectorAll("#recordings details, #finding details").forEach((each) => { each.open = true; })',
      );
      await page.locator('.mapping-columns').waitFor();
      const within = ['#recordings', '#finding'];
      const { broken, looked } = await axe(page, { within });
      expect(broken).toEqual([]);
      expect(looked).toBeGreaterThan(20);
      expect(await sticksOut(page)).toBeLessThanOrEqual(0);
      // In the other theme only the colours differ.
      await page.emulateMedia({ colorScheme: view.other });
      expect((await axe(page, { within, rules: ['color-contrast'] })).broken).toEqual([]);
    }, view));
});
