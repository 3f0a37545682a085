/** A simulated car recorded from the page: the finding grows, a reload loses nothing, codes are cleared, the job keeps all. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Job } from '../../src/jobs/record/job.ts';
import type { LiveOfJob, LiveStatus } from '../../src/server/contract/live.ts';
import { axe, smallTargets, sticksOut } from './pages-open.ts';
import { dropFiles, EXAMPLES, openedId, openWorkbench, until, type Workbench } from './workbench.ts';

let bench: Workbench;
beforeAll(async () => {
  bench = await openWorkbench('--no-demo');
});
afterAll(() => bench?.close());

const liveOf = async (id: string): Promise<LiveStatus> => {
  const { live } = (await (await bench.get(`/jobs/${id}/live`)).json()) as LiveOfJob;
  if (live === null) throw new Error('nothing runs');
  return live;
};
const phase = (page: Page, words: string | RegExp) => page.locator('.live-phases li').filter({ hasText: words });

async function newJob(page: Page, name: string): Promise<string> {
  await page.goto(bench.address);
  await page.getByRole('button', { name: 'New job' }).click();
  await page.getByLabel('What you call the car').fill(name);
  await page.keyboard.press('Enter');
  const id = await openedId(page);
  await page.locator('#complaint').waitFor();
  await dropFiles(page, '#sheet', [`${EXAMPLES}/invented-estate.car.json`]);
  await until(
    () => bench.job(id),
    ({ car }) => car !== null,
  );
  return id;
}

async function begin(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Record from the car' }).click();
  await page.getByRole('radio', { name: /^Simulated car/ }).check();
  await page.getByRole('radio', { name: /vacuum draw/ }).check();
  await page.getByRole('button', { name: 'Begin to record' }).click();
}

describe('recording from the car', () => {
  test('a car with a leak: from the choice of the line to a recording in the job', () =>
    bench.with({}, async ({ page }) => {
      const id = await newJob(page, 'grey estate, bay 2');
      await page.getByRole('link', { name: 'Record from the car' }).click();
      const go = page.getByRole('button', { name: 'Begin to record' });
      expect(await go.isDisabled()).toBe(true);
      await page.getByRole('radio', { name: /^Simulated car/ }).check();
      // What is done has to be said, as the bus does not tell the vent's command.
      expect(await go.isDisabled()).toBe(true);
      await page.getByRole('radio', { name: /vacuum draw/ }).check();
      const caution = await page.getByRole('note').textContent();
      for (const words of ['moving air', 'No flame, spark', 'service information']) expect(caution).toContain(words);
      expect((await axe(page)).broken).toEqual([]);
      await go.click();

      await page.getByText(/samples a second/).waitFor();
      await phase(page, /^draw/).waitFor();
      await page.locator('.live-chart canvas').waitFor();
      await page.locator('.finding-sentence').waitFor();

      // The page goes away in the middle and comes back; the recording does not notice.
      const before = await liveOf(id);
      await page.reload();
      await page.locator('.finding-sentence').waitFor();
      const after = await liveOf(id);
      expect(after.id).toBe(before.id);
      expect(after.rows).toBeGreaterThan(before.rows);
      expect(after.pauses).toEqual(before.pauses);
      // Its beginning is on the page again.
      await phase(page, /^before, 0\.\d\u00a0s to /).waitFor();
      await phase(page, /^hold since/).waitFor();
      await page.getByText(/^Holding longer:/).waitFor();
      await until(
        () => page.locator('#finding').textContent(),
        (words) =>
          words !== null &&
          /So far: leak to the open air/.test(words) &&
          /Hole, equivalent diameter: [\d.]+\u00a0mm/.test(words),
      );
      await page.getByText('drawn as the draw shows it').waitFor();

      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect([colorScheme, (await axe(page)).broken]).toEqual([colorScheme, []]);
      }
      await page.setViewportSize({ width: 390, height: 844 });
      expect(await sticksOut(page)).toBe(0);
      expect(await smallTargets(page)).toEqual([]);
      await page.setViewportSize({ width: 1280, height: 900 });

      await page.getByRole('button', { name: 'Stop and keep …' }).click();
      await page.getByLabel('Name of the recording').fill('draw, bay 2');
      expect((await axe(page)).broken).toEqual([]);
      await page.getByRole('button', { name: 'Stop and keep it' }).click();
      await page.waitForURL(`**/jobs/${id}**`);
      const job = await until<Job>(
        () => bench.job(id),
        ({ recordings }) => recordings.length === 1,
      );
      const [entry] = job.recordings;
      expect(entry).toMatchObject({ label: 'draw, bay 2', facts: { procedure: 'vacuum-draw' }, useInFinding: true });
      const raw = await bench.get(`/jobs/${id}/recordings/${entry!.id}/raw`);
      expect((await raw.arrayBuffer()).byteLength).toBe(entry!.bytes);
      await page.getByRole('article', { name: 'draw, bay 2' }).scrollIntoViewIfNeeded();
      await page.locator('.recording canvas').first().waitFor();
    }));

  test('codes are cleared by who types the word, after all is saved; what is thrown away is asked for', () =>
    bench.with({}, async ({ page }) => {
      const id = await newJob(page, 'blue saloon');
      await begin(page);
      const codes = page.locator('.live-codes li');
      await codes.filter({ hasText: 'P0442 stored' }).waitFor();
      await page.getByRole('button', { name: 'Clear codes …' }).click();
      const dialog = page.getByRole('dialog', { name: 'Clear the codes of this car' });
      for (const words of ['permanent codes: they go only after', 'no way to pass an inspection', 'goes into this job'])
        await dialog.getByText(words).waitFor();
      expect((await axe(page)).broken).toEqual([]);
      const go = dialog.getByRole('button', { name: 'Save everything, then clear the codes' });
      expect(await go.isDisabled()).toBe(true);
      // By keyboard alone: the field has the focus.
      await page.keyboard.type('clear');
      expect(await go.isDisabled()).toBe(false);
      await page.keyboard.press('Enter');
      await page
        .getByText(/^Cleared; confirmed by control unit 7E8/)
        .first()
        .waitFor();
      await codes.filter({ hasText: 'P0442 permanent' }).waitFor();
      expect(await codes.count()).toBe(1);
      const { codes: kept, notes, attachments } = await bench.job(id);
      expect(kept.map(({ code, status }) => `${code} ${status}`)).toEqual(['P0442 stored', 'P0442 permanent']);
      expect(notes.map(({ text }) => text).join('\n')).toMatch(/Before codes were cleared[\s\S]*Permanent codes stay/);
      expect(attachments.map(({ fileName }) => fileName)).toEqual([expect.stringMatching(/^before-clearing-codes/)]);

      await page.getByRole('button', { name: 'Stop and throw away …' }).click();
      await page.getByRole('button', { name: 'Cancel' }).click();
      expect((await liveOf(id)).state).toBe('sampling');
      await page.getByRole('button', { name: 'Stop and throw away …' }).click();
      await page.getByRole('button', { name: 'Stop and throw it away' }).click();
      await page.getByRole('button', { name: 'Begin to record' }).waitFor();
      expect((await bench.job(id)).recordings).toEqual([]);
    }));

  test('in German, on a telephone', () =>
    bench.with({ language: 'de-DE', width: 390, scheme: 'dark' }, async ({ page }) => {
      const [job] = await bench.jobs();
      await page.goto(`${bench.address}/jobs/${job!.id}/live`);
      await page.getByRole('radio', { name: /^Simuliertes Fahrzeug/ }).check();
      await page.getByRole('radio', { name: /Absaugen/ }).check();
      await page.getByRole('note').getByText('Herstellerunterlagen').first().waitFor();
      expect(await sticksOut(page)).toBe(0);
      expect((await axe(page)).broken).toEqual([]);
      await page.getByRole('button', { name: 'Aufzeichnung beginnen' }).click();
      await page.getByText(/Messwerte je Sekunde/).waitFor();
      await page.locator('.live-chart canvas').waitFor();
      expect(await sticksOut(page)).toBe(0);
      expect((await axe(page)).broken).toEqual([]);
      await page.getByRole('button', { name: 'Beenden und wegwerfen …' }).click();
      await page.getByRole('button', { name: 'Beenden und wegwerfen', exact: true }).click();
      await page.getByRole('button', { name: 'Aufzeichnung beginnen' }).waitFor();
    }));
});
