/** The real workbench with its demo shop: for everybody (axe, keyboard alone, narrow, German), and without the demo. */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe, sticksOut } from './pages-open.ts';
import { EXAMPLES, LEAK_CSV, openedId, openWorkbench, pdfText, until, type Workbench } from './workbench.ts';

let bench: Workbench;
beforeAll(async () => {
  bench = await openWorkbench();
});
afterAll(() => bench?.close());

const demoNamed = async (name: string): Promise<string> => {
  const found = (await bench.jobs()).find(({ demo, vehicle }) => demo && vehicle === name);
  if (found === undefined) throw new Error(`no demo job ${name}`);
  return found.id;
};
test('no rule of accessibility is broken, in both themes: list, sheet with finding, hand-over page, system', () =>
  bench.with({ scheme: 'light' }, async ({ page }) => {
    const id = await demoNamed('Red hatchback');
    const places = [
      ['/', ['.jobs-table .demo-mark']],
      [`/jobs/${id}`, ['#finding .finding-sentence', '.recording', '.recording canvas', 'aside.side svg']],
      [`/jobs/${id}/hand-over`, ['iframe']],
      ['/system', ['main svg']],
    ] as const;
    for (const [path, shown] of places) {
      await page.goto(bench.address + path);
      for (const part of shown) {
        await page.locator(part).first().waitFor();
        // Charts are drawn when they come into sight.
        if (part === '.recording') await page.locator('#recordings').scrollIntoViewIfNeeded();
      }
      const { broken, looked } = await axe(page);
      expect(broken, path).toEqual([]);
      expect(looked, path).toBeGreaterThan(10);
      // In the other theme only the colours differ.
      await page.emulateMedia({ colorScheme: 'dark' });
      expect((await axe(page, { rules: ['color-contrast'] })).broken, path).toEqual([]);
      await page.emulateMedia({ colorScheme: 'light' });
    }
  }));

test('German from the list to the finding and the printed hand-over', () =>
  bench.with({ language: 'de-DE' }, async ({ page, context }) => {
    const id = await demoNamed('Red hatchback');
    await page.goto(bench.address);
    await page.getByRole('heading', { level: 1, name: 'Aufträge' }).waitFor();
    await page.getByRole('link', { name: /Red hatchback/ }).click();
    const sentence = page.locator('#finding .finding-sentence');
    await sentence.waitFor();
    const finding = (await page.locator('#finding').allInnerTexts()).join();
    expect(finding).not.toMatch(/\b(the|with|which|probability|record(ed)?|not|leak)\b/i);
    await page.getByRole('button', { name: 'Dokument erstellen' }).click();
    const { handOvers, number } = await until(
      () => bench.job(id),
      (job) => job.handOvers.some(({ language }) => language === 'de'),
    );
    const made = handOvers.find(({ language }) => language === 'de')!;
    const link = page.locator(`#hand-over a[href*="${made.id}"]`);
    await link.waitFor();
    expect((await link.allInnerTexts()).join()).toMatch(/^PDF vom/);
    const answer = await context.request.get(new URL((await link.getAttribute('href'))!, bench.address).href);
    const printed = pdfText(await answer.body());
    expect(printed).toMatch(new RegExp(`Auftrag ${number}\\b`));
    expect(printed).toContain('Reparatur');
  }));

test('at 390 px, by touch, from the list to a finding: nothing sticks out', () =>
  bench.with({ width: 390, hasTouch: true }, async ({ page }) => {
    await page.goto(bench.address);
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await sticksOut(page)).toBeLessThanOrEqual(0);
    const chosen = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Start with a recording' }).tap();
    await (await chosen).setFiles(LEAK_CSV);
    await openedId(page);
    await page
      .getByText(/^Engine-vacuum draw/)
      .first()
      .tap();
    await page.getByRole('button', { name: 'Make the finding' }).tap();
    await page.locator('#finding .finding-sentence').waitFor();
    await page.locator('.recording').scrollIntoViewIfNeeded();
    await page.locator('.recording canvas').first().waitFor();
    expect(await sticksOut(page)).toBeLessThanOrEqual(0);
    await page.getByRole('link', { name: 'Open as a page' }).tap();
    await page.locator('iframe').waitFor();
    expect(await sticksOut(page)).toBeLessThanOrEqual(0);
  }));

test('the main job with the keyboard alone', () =>
  bench.with({}, async ({ page }) => {
    await page.goto(bench.address);
    await page.getByRole('heading', { level: 1 }).waitFor();
    const keys = keyboardOf(page);
    await keys.tabTo('Start with a recording');
    await keys.chooseFile(LEAK_CSV);
    const id = await openedId(page);
    await page.locator('.recording').waitFor();
    await keys.tabTo('Engine-vacuum draw');
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Make the finding', disabled: false }).waitFor();
    await keys.tabTo('Make the finding');
    await page.keyboard.press('Enter');
    await page.locator('#finding .finding-sentence').waitFor();

    await keys.tabTo('Record a check');
    await page.keyboard.press('Enter');
    await page.keyboard.type('Looked at the cap');
    await page.keyboard.press('Tab');
    await page.keyboard.type('Seal cracked');
    await keys.tabTo('Save');
    await page.keyboard.press('Enter');
    await keys.tabTo('Record a repair');
    await page.keyboard.press('Enter');
    await page.keyboard.type('Cap replaced');
    await keys.tabTo('Save');
    await page.keyboard.press('Enter');
    await keys.tabTo('Add a recording made after the repair');
    await keys.chooseFile(join(EXAMPLES, 'demo-shop', 'hatchback-after.csv.gz'));
    await until(
      () => bench.job(id),
      ({ recordings }) => recordings.length === 2,
    );
    await keys.tabTo('Begin the proof');
    await page.keyboard.press('Enter');
    await page.locator('#proof textarea').first().waitFor();
    await keys.tabTo('Not proven yet');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await keys.tabTo('Make the document');
    await page.keyboard.press('Enter');
    const job = await until(
      () => bench.job(id),
      ({ handOvers }) => handOvers.length === 1,
    );
    expect(job.checks).toMatchObject([{ what: 'Looked at the cap', result: 'Seal cracked' }]);
    expect(job.repairs).toMatchObject([{ what: 'Cap replaced' }]);
    expect(job.proof?.verdict).toBe('held');
    expect(job.findings).toHaveLength(1);
    await page.getByRole('link', { name: /^PDF of/ }).waitFor();
    await keys.tabTo('PDF of');
  }));

test('the demo is there on first start, marked as one, and goes with one click; own jobs stay', () =>
  bench.with({}, async ({ page }) => {
    const own = (await bench.jobs()).filter(({ demo }) => !demo).map(({ id }) => id);
    const demo = (await bench.jobs()).filter((job) => job.demo);
    expect(demo.length).toBeGreaterThan(5);
    await page.goto(bench.address);
    await page.locator('.demo-mark').first().waitFor();
    expect(await page.locator('.jobs-table .demo-mark').count()).toBe(demo.filter(({ closed }) => !closed).length);
    await page.getByRole('button', { name: 'Remove the demo' }).click();
    await page.locator('.demo-mark').first().waitFor({ state: 'detached' });
    expect((await bench.jobs()).map(({ id }) => id).sort()).toEqual(own.sort());
  }));

/** Goes through the page with the Tab key as a person does; every stop must be seen. */
function keyboardOf(page: Page) {
  const at = (): Promise<{ name: string; isSeen: boolean }> =>
    page.evaluate(() => {
      const element = document.activeElement as HTMLElement;
      if (element === document.body) return { name: '', isSeen: true };
      const labels = 'labels' in element ? [...((element as HTMLInputElement).labels ?? [])] : [];
      const name = [...labels, element]
        .map((part) => `${part.textContent} ${part.getAttribute('aria-label') ?? ''}`)
        .join(' ');
      return { name, isSeen: getComputedStyle(element).outlineStyle !== 'none' || element.matches('[type=file]') };
    });
  const MOST = 250;
  // From now on the browser hands every choice of files to the test, also one that comes at once.
  page.on('filechooser', () => undefined);
  return {
    async tabTo(name: string): Promise<void> {
      const passed: string[] = [];
      for (let k = 0; k < MOST; k++) {
        const now = await at();
        if (now.name.includes(name)) return;
        expect(now.isSeen, `focus on "${now.name}" is seen`).toBe(true);
        passed.push(now.name.slice(0, 40));
        await page.keyboard.press('Tab');
      }
      throw new Error(`"${name}" is not reached by Tab; passed: ${passed.slice(-60).join(' | ')}`);
    },
    async chooseFile(path: string): Promise<void> {
      const chosen = page.waitForEvent('filechooser');
      await page.keyboard.press('Enter');
      await (await chosen).setFiles(path);
    },
  };
}
