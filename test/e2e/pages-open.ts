/** A page of the workbench before a server from memory, and what is asked of every page. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import type { Job } from '../../src/jobs/record/job.ts';
import { type FakeServer, startFakeServer } from './pages-fake-server.ts';
import { otherJobs, sampleJob } from './pages-sample-job.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface View {
  readonly width?: number;
  readonly scheme?: 'light' | 'dark';
  readonly language?: 'en-GB' | 'de-DE';
  readonly reducedMotion?: 'reduce' | 'no-preference';
}

export interface Opened {
  readonly server: FakeServer;
  readonly context: BrowserContext;
  readonly page: Page;
  /** Faults that the page told its console. */
  readonly faults: string[];
}

/** With a service worker only where a test is about it: it would answer for the server. */
export async function withPages(
  browser: Browser,
  run: (opened: Opened) => Promise<void>,
  view: View = {},
  jobs: readonly Job[] = [sampleJob, ...otherJobs],
  serviceWorkers: 'allow' | 'block' = 'block',
): Promise<void> {
  const server = await startFakeServer(jobs);
  const context = await browser.newContext({
    viewport: { width: view.width ?? 1280, height: 900 },
    colorScheme: view.scheme ?? 'light',
    locale: view.language ?? 'en-GB',
    reducedMotion: view.reducedMotion ?? 'no-preference',
    serviceWorkers,
  });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' && /policy|react|uncaught/i.test(message.text())) faults.push(message.text());
  });
  try {
    await run({ server, context, page, faults });
  } finally {
    await context.close();
    await server.stop();
  }
}

interface AxeResult {
  readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[];
  readonly passes: readonly unknown[];
}

/** What axe finds broken, and how much it looked at. */
export async function axe(page: Page, rules?: readonly string[]): Promise<{ broken: string[]; looked: number }> {
  await page.evaluate(AXE);
  const result = (await page.evaluate(
    `axe.run(${rules === undefined ? '' : JSON.stringify({ runOnly: rules })})`,
  )) as AxeResult;
  return {
    broken: result.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html.slice(0, 140)).join(' | ')}`),
    looked: result.passes.length,
  };
}

/** Things to press or fill in that are smaller than a finger; links within a sentence are text. */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('a, button, select, textarea, summary, label.option, .field input')]
      .filter((element) => {
        const box = element.getBoundingClientRect();
        const isInText = element.closest('p, .jobs-table, .skip') !== null;
        const isShown = box.width > 0 && box.height > 0 && getComputedStyle(element).visibility === 'visible';
        return isShown && !isInText && (box.width < 43.5 || box.height < 43.5);
      })
      .map((element) => element.outerHTML.slice(0, 120)),
  );

/** How far the page sticks out to the right, px. */
export const sticksOut = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Waits until something holds, and says what it was last when it never does. */
export async function until<T>(read: () => T | Promise<T>, holds: (value: T) => boolean): Promise<T> {
  const end = Date.now() + 20_000;
  for (;;) {
    const value = await read();
    if (holds(value)) return value;
    if (Date.now() > end) throw new Error(`still ${JSON.stringify(value)}`);
    await new Promise((wait) => setTimeout(wait, 50));
  }
}
