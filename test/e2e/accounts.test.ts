/** Accounts and links on the real workbench: who signs in, what a reader and a guest see, and what the log keeps. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { API, TOKEN_HEADER } from '../../src/server/contract/paths.ts';
import { EN } from '../../src/web/text/en.ts';
import { axe, smallTargets, sticksOut } from './pages-open.ts';
import { dropFiles, LEAK_CSV, openedId, openWorkbench, until, type Workbench } from './workbench.ts';

const WORDS = EN.shop;
const PASSWORD = 'correct horse 7 battery';
let bench: Workbench;
beforeAll(async () => {
  bench = await openWorkbench('--no-demo');
});
afterAll(() => bench?.close());

async function signIn(page: Page, name: string, password = PASSWORD): Promise<void> {
  await page.goto(bench.address);
  await page.getByLabel(WORDS.signIn.name).fill(name);
  await page.getByLabel(WORDS.signIn.password).fill(password);
  await page.getByRole('button', { name: WORDS.signIn.go }).click();
}

describe('from the first account on', () => {
  let id = '';

  test('everybody signs in; the owner adds a reader, and the log says who did what', () =>
    bench.with({}, async ({ page }) => {
      await page.goto(bench.address);
      await page.getByRole('heading', { name: EN.jobs.empty }).waitFor();
      await dropFiles(page, 'main', [LEAK_CSV]);
      id = await openedId(page);
      await until(
        () => bench.job(id),
        ({ recordings }) => recordings.length === 1,
      );
      const status = await page.evaluate(
        async ({ api, header, password }) => {
          const { csrf } = await (await fetch(`${api}/session`)).json();
          const headers = { [header]: csrf, 'content-type': 'application/json' };
          const body = JSON.stringify({ name: 'Anna', role: 'owner', password });
          return (await fetch(`${api}/accounts`, { method: 'POST', headers, body })).status;
        },
        { api: API, header: TOKEN_HEADER, password: PASSWORD },
      );
      expect(status).toBe(201);

      await signIn(page, 'Anna', 'not the right one');
      await page.getByText('Name or password is wrong.').waitFor();
      await signIn(page, 'Anna');
      await page.getByRole('link', { name: EN.shop.settings.title }).click();
      const accounts = page.locator('#accounts');
      const form = accounts.getByRole('form', { name: WORDS.accounts.add });
      await form.getByLabel(WORDS.accounts.name).fill('Rea');
      await form.getByLabel(WORDS.accounts.role).selectOption('reader');
      await form.getByText(WORDS.accounts.roleWords.reader).waitFor();
      await form.getByLabel(WORDS.accounts.password).fill(PASSWORD);
      await form.getByRole('button', { name: WORDS.accounts.create }).click();
      const row = accounts.getByRole('listitem', { name: 'Rea' });
      await row.getByText(WORDS.accounts.active).waitFor();
      await accounts.locator('summary', { hasText: WORDS.securityLog.title }).click();
      const log = accounts.getByRole('region', { name: WORDS.securityLog.title });
      const { kinds } = WORDS.securityLog;
      for (const kind of [kinds['account-added'], kinds['sign-in-refused'], kinds['signed-in']])
        await log.getByText(kind).first().waitFor();
      expect(await sticksOut(page)).toBeLessThanOrEqual(0);
      expect(await smallTargets(page)).toEqual([]);
      expect((await axe(page)).broken).toEqual([]);
    }));

  test('a reader reads and finds nothing to change', () =>
    bench.with({}, async ({ page }) => {
      await signIn(page, 'Rea');
      await page.getByRole('heading', { name: EN.jobs.title }).waitFor();
      await page.goto(`${bench.address}/jobs/${id}`);
      await page.locator('#hand-over').waitFor();
      await page.getByText(EN.job.readOnly).waitFor();
      expect(await page.getByRole('button', { name: EN.job.repair.record }).count()).toBe(0);
      expect(await page.getByRole('button', { name: EN.job.handOver.makeShare }).count()).toBe(0);
    }));

  test('a link shows the job to whoever has it, until it is revoked', () =>
    bench.with({}, async ({ page, context }) => {
      await signIn(page, 'Anna');
      await page.getByRole('heading', { name: EN.jobs.title }).waitFor();
      await page.goto(`${bench.address}/jobs/${id}`);
      const handOver = page.locator('#hand-over');
      await handOver.getByLabel(EN.job.handOver.shareFor).fill('the insurer');
      await handOver.getByRole('button', { name: EN.job.handOver.makeShare }).click();
      const link = (await handOver.locator('.code').textContent()) ?? '';
      await context.clearCookies();
      const guest = await context.newPage();
      await guest.goto(link);
      await guest.locator('#monitor').waitFor();
      expect(await guest.locator('#recordings').textContent()).toContain('leak-self-test');
      await guest.goto(bench.address);
      await guest.getByRole('heading', { name: WORDS.signIn.title }).waitFor();

      await signIn(page, 'Anna');
      await page.getByRole('heading', { name: EN.jobs.title }).waitFor();
      await page.goto(`${bench.address}/jobs/${id}`);
      await handOver.getByRole('button', { name: EN.job.handOver.revokeLabel('the insurer') }).click();
      await handOver.getByText('the insurer').waitFor({ state: 'detached' });
      await guest.goto(link);
      await guest.getByRole('heading', { name: WORDS.shared.gone }).waitFor();
    }));
});
