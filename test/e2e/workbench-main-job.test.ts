/** The main job on the real workbench: from an empty store to the printed hand-over. */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { dropFiles, EXAMPLES, LEAK_CSV, openedId, openWorkbench, pdfText, until, type Workbench } from './workbench.ts';

let bench: Workbench;
beforeAll(async () => {
  bench = await openWorkbench('--no-demo');
});
afterAll(() => bench?.close());

/** What a person does, one by one: each is an action of mouse, finger or keyboard. */
function countedHands(page: Page) {
  const done: string[] = [];
  return {
    done,
    async drop(place: string, path: string): Promise<void> {
      done.push(`drop ${path.split('/').at(-1)}`);
      await dropFiles(page, place, [path]);
    },
    async choose(name: RegExp): Promise<void> {
      done.push(`choose ${name.source}`);
      await page.getByRole('radio', { name }).check();
    },
    async press(name: string): Promise<void> {
      done.push(`press ${name}`);
      await page.getByRole('button', { name }).click();
    },
  };
}

const MOST_ACTIONS = 6;

describe('main job', () => {
  let id = '';

  test('from an empty store to a finding on a dropped recording in at most six actions', () =>
    bench.with({}, async ({ page, hosts }) => {
      await page.goto(bench.address);
      await page.getByRole('heading', { name: 'No jobs yet' }).waitFor();
      expect(await bench.jobs()).toEqual([]);
      const hands = countedHands(page);
      await hands.drop('main', LEAK_CSV);
      id = await openedId(page);
      await hands.choose(/^Engine-vacuum draw/);
      await hands.press('Make the finding');
      await page.locator('#finding .finding-sentence').waitFor();
      expect(hands.done.length).toBeLessThanOrEqual(MOST_ACTIONS);

      const { recordings, findings } = await bench.job(id);
      expect(recordings).toHaveLength(1);
      expect(findings).toHaveLength(1);
      const { finding } = findings[0]!.sheet;
      expect(finding.causes[0]?.id).toBe('leak');
      expect((await page.locator('#finding .finding-sentence').allInnerTexts()).join()).toMatch(
        /^Leak to the open air, /,
      );
      // No request leaves the machine.
      expect([...hosts]).toEqual([new URL(bench.address).host]);
    }));

  test('check, repair, recording after it, proof, printed hand-over', () =>
    bench.with({}, async ({ page, context }) => {
      await page.goto(`${bench.address}/jobs/${id}`);
      await page.getByRole('button', { name: 'Record a check' }).click();
      const dialog = page.getByRole('dialog');
      await dialog.getByLabel('What was done, and where').fill('Smoke at the filler neck');
      await dialog.getByLabel('What was seen or measured').fill('Smoke leaves under the cap');
      await dialog.getByLabel('Speaks for').selectOption('leak');
      await dialog.getByRole('radio', { name: /as good as proof/ }).check();
      await dialog.getByRole('button', { name: 'Save' }).click();
      await page.locator('#next-check').getByText('Smoke leaves under the cap').waitFor();
      // The finding is older than the check and says so.
      await page
        .locator('#finding')
        .getByText(/^Outdated/)
        .waitFor();

      await page.getByRole('button', { name: 'Record a repair' }).click();
      await dialog.getByLabel('What was done').fill('Cap replaced, seal land of the neck cleaned');
      await dialog.getByRole('button', { name: 'Add a part' }).click();
      await dialog.getByLabel('Part', { exact: true }).fill('filler cap');
      await dialog.getByLabel('Part number').fill('CAP-7');
      await dialog.getByRole('button', { name: 'Save' }).click();
      await page.locator('#repair').getByText('filler cap (CAP-7)').waitFor();

      await dropFiles(page, '#proof', [join(EXAMPLES, 'demo-shop', 'hatchback-after.csv.gz')]);
      await page.locator('#recordings').getByText('after the repair', { exact: false }).last().waitFor();
      await until(
        () => bench.job(id),
        ({ recordings }) => recordings.some(({ taken }) => taken === 'after-repair'),
      );

      const proof = page.locator('#proof');
      await proof.getByRole('button', { name: 'Begin the proof' }).click();
      await proof.getByRole('radio', { name: 'The repair held' }).check();
      await proof.getByLabel('In words').fill('The vacuum now holds through the whole test.');
      await proof.getByLabel('What has not been verified').fill('The monitor has not run since.');
      const whole = await until(
        () => bench.job(id),
        ({ proof: made }) => made?.missing === 'The monitor has not run since.',
      );
      expect(whole.checks).toMatchObject([{ speaksFor: ['leak'], strength: 'strong' }]);
      expect(whole.repairs).toMatchObject([{ parts: [{ name: 'filler cap', number: 'CAP-7' }], addresses: ['leak'] }]);
      expect(whole.proof?.verdict).toBe('held');
      expect(whole.proof?.after).toEqual(whole.recordings.filter((r) => r.taken === 'after-repair').map((r) => r.id));

      await page.getByRole('button', { name: 'Make the document' }).click();
      const link = page.locator('#hand-over').getByRole('link', { name: /^PDF of/ });
      const answer = await context.request.get(new URL((await link.getAttribute('href'))!, bench.address).href);
      expect(answer.headers()['content-type']).toBe('application/pdf');
      const pdf = await answer.body();
      expect(pdf.subarray(0, 5).toString('latin1')).toBe('%PDF-');
      const printed = pdfText(pdf).replace(/\s+/g, ' ');
      expect(printed).toContain(`Job ${whole.number}`);
      for (const words of [
        'Smoke at the filler neck',
        'Cap replaced, seal land of the neck cleaned',
        'CAP-7',
        'The vacuum now holds through the whole test.',
        'The monitor has not run since.',
        'leak-self-test',
        'hatchback-after',
      ]) {
        expect(printed).toContain(words);
      }

      // The page to print says the same.
      await page.getByRole('link', { name: 'Open as a page' }).click();
      const sheet = page.frameLocator('iframe.hand-over-frame');
      await sheet.getByText('The vacuum now holds through the whole test.').first().waitFor();
    }));
});
