/** Monitor and inspection on the real workbench: from a dropped capture to blocker, verdict, plan and the printed slip. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { API, TOKEN_HEADER } from '../../src/server/contract/paths.ts';
import { DE } from '../../src/web/text/de.ts';
import { EN } from '../../src/web/text/en.ts';
import { captureText, HOT_DAY, MADE_VIN, madeCar } from '../readiness/drive-capture.ts';
import { axe, smallTargets, sticksOut } from './pages-open.ts';
import { dropFiles, openedId, openWorkbench, pdfText, until, type Workbench } from './workbench.ts';

const WORDS = EN.monitor;
let bench: Workbench;
let folder: string;
let id = '';
const log = (name: string): string => join(folder, name);
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'vaporwright-captures-'));
  writeFileSync(log('hot-day.log'), captureText(madeCar(HOT_DAY)));
  const fixed = { codes: { confirmed: [], pending: [], permanent: ['P0456'] }, lampOn: false };
  writeFileSync(log('after.log'), captureText(madeCar(HOT_DAY, { ...fixed, incompleteMonitors: [] }), false));
  bench = await openWorkbench('--no-demo');
});
afterAll(async () => {
  await bench?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Warm enough by day, one hour a line, from the next hour on. */
const FORECAST = Array.from(
  { length: 80 },
  (_, k) => `${String(k % 24).padStart(2, '0')}:00 ${(16 - 4 * Math.cos(((k % 24) - 3) / 3.8)).toFixed(1)}`,
).join('\n');

/** As the field has it: nine days from now, at noon. */
function inNineDays(): string {
  const day = new Date(Date.now() + 9 * 86_400_000);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}T12:00`;
}

/** The section asks for recordings when it comes near the window. */
const toMonitor = (page: Page): Promise<void> => page.locator('#monitor .why').scrollIntoViewIfNeeded();

describe('monitor and inspection', () => {
  test('what a capture says is offered, and taken in with one press, never by itself', () =>
    bench.with({}, async ({ page }) => {
      await page.goto(bench.address);
      await page.getByRole('heading', { name: EN.jobs.empty }).waitFor();
      await dropFiles(page, 'main', [log('hot-day.log')]);
      id = await openedId(page);
      const recordings = page.locator('#recordings');
      await recordings.getByRole('article').scrollIntoViewIfNeeded();
      await recordings.getByText('Codes: P0456 stored, P0442 pending and P0456 permanent').waitFor();
      const before = await bench.job(id);
      expect(before.codes).toEqual([]);
      expect(before.monitor.readings).toEqual([]);
      await recordings.getByRole('button', { name: WORDS.capture.take }).click();
      const after = await until(
        () => bench.job(id),
        ({ monitor, codes, vehicle }) =>
          monitor.readings.length === 1 && codes.length === 3 && vehicle.vin !== undefined,
      );
      expect(after.vehicle.vin).toBe(MADE_VIN);
      expect(after.codes.map(({ code, status }) => `${code} ${status}`)).toEqual([
        'P0456 stored',
        'P0442 pending',
        'P0456 permanent',
      ]);
      expect(after.codes[0]?.freezeFrame?.map(({ name }) => name)).toContain('fuel level');
      expect(after.monitor.readings[0]).toMatchObject({ source: 'capture', fileName: 'hot-day.log' });
      await recordings.getByText(/^Taken into the job/).waitFor();
    }));

  test('the first blocking condition with its time and figure, for each attempt; another limit, another blocker', () =>
    bench.with({}, async ({ page }) => {
      await page.goto(`${bench.address}/jobs/${id}`);
      const monitor = page.locator('#monitor');
      await toMonitor(page);
      await monitor.getByText(WORDS.why.needsLayout).waitFor();
      await page.getByRole('radio', { name: /^Engine-vacuum draw/ }).check();
      const attempts = monitor.locator('.attempts > ol > li');
      await attempts.first().getByText('First blocked at 0:10 by the condition “intake air at start”:').waitFor();
      await attempts.first().getByText('intake temperature 41 °C at start, limit 35 °C').first().waitFor();
      expect(await attempts.count()).toBe(2);
      expect(await attempts.nth(1).textContent()).toMatch(/24:20.*coolant at start[\s\S]*coolant temperature 70/);

      await monitor.locator('summary', { hasText: WORDS.conditions.title }).click();
      const air = monitor
        .locator('details', { has: page.locator('summary', { hasText: 'intake air at start' }) })
        .last();
      await air.locator('summary').click();
      await air.getByLabel(WORDS.conditions.high).fill('45');
      // Nothing else blocks that is seen: the time parked before is not known.
      await attempts.first().getByText(WORDS.why.unknown).waitFor();
      const own = await until(
        () => bench.job(id),
        (job) => job.monitor.conditions !== null,
      );
      const changed = own.monitor.conditions?.conditions.find(({ id: name }) => name === 'intake air at start');
      expect(changed).toMatchObject({ high: 318.15, mark: 'given by hand' });
      await monitor.getByLabel(WORDS.why.parked('hot-day.log')).fill('2');
      await attempts.first().getByText('parked only 2 h before, 8 h wanted').first().waitFor();
      await monitor.getByRole('button', { name: WORDS.conditions.reset }).click();
      await attempts.first().getByText('intake temperature 41 °C at start, limit 35 °C').first().waitFor();
      await until(
        () => bench.job(id),
        (job) => job.monitor.conditions === null,
      );
    }));

  test('verdict with rule, date and caution; a plan up to the inspection; the slip on paper', () =>
    bench.with({}, async ({ page, context }) => {
      await page.goto(`${bench.address}/jobs/${id}`);
      const monitor = page.locator('#monitor');
      await monitor.getByText(WORDS.inspection.needsYear).waitFor();
      await page.locator('#car summary', { hasText: EN.job.car.vehicle }).click();
      await page.getByLabel(EN.job.car.modelYear).fill('2012');
      await monitor.getByText('Would fail by this rule.').waitFor();
      await monitor.getByText('The lamp is commanded on for 1 code.').waitFor();
      await monitor.getByText(/as of 2001-04-05 \(secondary source/).waitFor();
      expect(await monitor.getByText(WORDS.readiness.caution).count()).toBeGreaterThan(0);

      await monitor.getByLabel(WORDS.inspection.date).fill(inNineDays());
      await monitor.getByLabel(WORDS.plan.level).fill('55');
      await monitor.getByLabel(WORDS.plan.forecast).fill(`06:00 rain\n${FORECAST}`);
      await monitor.getByText(/^Line 1: “06:00 rain”; expected an hour and a temperature/).waitFor();
      await monitor.getByLabel(WORDS.plan.forecast).fill(FORECAST);
      await monitor
        .getByText(/^Inspection in 9 days .*: \d attempts?, \d+\s% that the monitor has run by then/)
        .waitFor();
      const starts = monitor.getByRole('region', { name: WORDS.plan.attempts }).locator('tbody tr');
      expect(await starts.count()).toBeGreaterThan(1);
      await monitor.getByText(/^No start, not even a short one, in the 8\sh before/).waitFor();
      await until(
        () => bench.job(id),
        (job) => job.monitor.plan.forecast?.text === FORECAST && job.monitor.plan.inspectionAt !== undefined,
      );

      await page.getByRole('button', { name: EN.job.handOver.make }).click();
      const link = page.locator('#hand-over').getByRole('link', { name: /^PDF of/ });
      const answer = await context.request.get(new URL((await link.getAttribute('href'))!, bench.address).href);
      const printed = pdfText(await answer.body()).replace(/[\s\u00a0]+/g, ' ');
      for (const words of ['Inspection slip', 'would fail by this rule', 'P0442', 'commanded on', 'How to drive'])
        expect(printed).toContain(words);
    }));

  test('a rule of the shop’s own, and the car read again after the repair', () =>
    bench.with({}, async ({ page }) => {
      await page.goto(`${bench.address}/settings`);
      const rules = page.locator('#rules');
      await rules.locator('summary').first().click();
      await rules.getByRole('button', { name: WORDS.rules.copy }).first().click();
      await rules.locator('summary', { hasText: WORDS.rules.newName }).click();
      await rules.getByLabel(WORDS.rules.name, { exact: true }).fill('Our county');
      await rules.getByLabel(WORDS.rules.inUse).selectOption({ label: 'Our county' });
      await until(
        async () =>
          (await (await bench.get('/settings')).json()) as {
            inspectionRules?: { name: string }[];
            inspectionRule?: string;
          },
        ({ inspectionRules, inspectionRule }) =>
          inspectionRules?.[0]?.name === 'Our county' && inspectionRule?.startsWith('own-') === true,
      );

      await page.goto(`${bench.address}/jobs/${id}`);
      await page.getByRole('button', { name: EN.job.repair.record }).click();
      const dialog = page.getByRole('dialog');
      await dialog.getByLabel(EN.job.repair.what).fill('Cap renewed');
      await dialog.getByRole('button', { name: EN.common.save }).click();
      await page.getByText('Cap renewed').first().waitFor();
      await dropFiles(page, '#recordings .drop-place', [log('after.log')]);
      const part = page.getByRole('article', { name: 'after.log' });
      await part.scrollIntoViewIfNeeded();
      await part.getByText(WORDS.capture.noSamples).waitFor();
      await part.getByText(/codes no longer reported go: P0456 stored and P0442 pending/).waitFor();
      await part.getByRole('button', { name: WORDS.capture.take }).click();
      const job = await until(
        () => bench.job(id),
        ({ monitor }) => monitor.readings.length === 2,
      );
      expect(job.monitor.readings[1]?.taken).toBe('after-repair');
      await until(
        () => bench.job(id),
        ({ codes }) => codes.map(({ code, status }) => `${code} ${status}`).join() === 'P0456 permanent',
      );
      const monitor = page.locator('#monitor');
      await monitor.getByText(WORDS.said.has).waitFor();
      await monitor.getByText('Would pass by this rule.').waitFor();
      await monitor.getByText(/^Our county, as of/).waitFor();
      await monitor.getByRole('columnheader', { name: WORDS.said.after }).waitFor();
    }));

  test('who has a link reads the same, in the shop’s rule, and can change nothing', () =>
    bench.with({}, async ({ page }) => {
      // The button stands where people sign in; here nobody does.
      await page.goto(bench.address);
      const url = await page.evaluate(
        async ({ api, header, id }) => {
          const { csrf } = await (await fetch(`${api}/session`)).json();
          const headers = { [header]: csrf, 'content-type': 'application/json' };
          const made = await fetch(`${api}/jobs/${id}/shares`, { method: 'POST', headers, body: '{}' });
          return (await made.json()).url as string;
        },
        { api: API, header: TOKEN_HEADER, id },
      );
      await page.goto(url);
      const monitor = page.locator('#monitor');
      await monitor.getByText(WORDS.said.has).waitFor();
      await monitor.getByText('Would pass by this rule.').waitFor();
      await monitor.getByText(/^Our county, as of/).waitFor();
      await toMonitor(page);
      await monitor.getByText('First blocked at 0:10 by the condition “intake air at start”:').waitFor();
      await monitor.getByRole('region', { name: WORDS.plan.attempts }).waitFor();
      for (const fold of await monitor.locator('details').all())
        await fold.evaluate((element) => element.setAttribute('open', ''));
      expect(await monitor.locator('button, select, textarea, input:not([readonly])').count()).toBe(0);
    }));

  test.each(['light', 'dark'] as const)(
    'in German at 390 px, %s: whole, reachable, nothing for axe to find',
    (scheme) =>
      bench.with({ width: 390, scheme, language: 'de-DE' }, async ({ page }) => {
        await page.goto(`${bench.address}/jobs/${id}`);
        const monitor = page.locator('#monitor');
        await toMonitor(page);
        await monitor.getByText('Zuerst gehindert bei 0:10 durch die Bedingung „Ansaugluft beim Start“:').waitFor();
        await monitor.getByText('Ansauglufttemperatur beim Start 41 °C, Grenze 35 °C').first().waitFor();
        await monitor.getByText('Würde nach dieser Regel bestehen.').waitFor();
        await monitor.getByRole('columnheader', { name: DE.monitor.said.after }).waitFor();
        for (const fold of await monitor.locator('details').all())
          await fold.evaluate((element) => element.setAttribute('open', ''));
        expect(await monitor.textContent()).not.toMatch(/\b(not read|commanded|blocked|wanted|from memory|drive)\b/);
        expect(await sticksOut(page)).toBe(0);
        expect(await smallTargets(page)).toEqual([]);
        const { broken, looked } = await axe(page);
        expect(broken).toEqual([]);
        expect(looked).toBeGreaterThan(10);
      }),
  );
});
