/** A page of the workbench before a server from memory, and what is asked of every page. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContext, Page, Request } from 'playwright-core';
import type { Job } from '../../src/jobs/record/job.ts';
import { type FakeServer, startFakeServer } from './pages-fake-server.ts';
import { otherJobs, sampleJob } from './pages-sample-job.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface View {
  readonly width?: number;
  readonly scheme?: 'light' | 'dark';
  readonly language?: 'en-GB' | 'de-DE';
  readonly reducedMotion?: 'reduce' | 'no-preference';
  /** See `startFakeServer`. */
  readonly areWorkersSilent?: boolean;
}

export interface Opened {
  readonly server: FakeServer;
  readonly context: BrowserContext;
  readonly page: Page;
  /** Faults that the page told its console. */
  readonly faults: string[];
  /** Waits until the page stands: all that it asked for has come, its drawing is computed, its next check is planned. */
  standing(): Promise<void>;
}

/** With a service worker only where a test is about it: it would answer for the server. */
export async function withPages(
  browser: Browser,
  run: (opened: Opened) => Promise<void>,
  view: View = {},
  jobs: readonly Job[] = [sampleJob, ...otherJobs],
  serviceWorkers: 'allow' | 'block' = 'block',
): Promise<void> {
  const server = await startFakeServer(jobs, { areWorkersSilent: view.areWorkersSilent ?? false });
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
  const standing = standingOf(page);
  try {
    await run({ server, context, page, faults, standing });
  } finally {
    await context.close();
    await server.stop();
  }
}

const QUIET_MS = 250;
/** What is computed in the browser's workers and not there yet. */
const AWAITED =
  '.player:not(:has(.trace svg .own)), #next-check:has(.next-step:not(.settled)):not(:has(.tree, .message.bad))';

/** Of a page that has not been opened yet: waits until all that it asked for has come. */
export function quietOf(page: Page): () => Promise<void> {
  const asked = new Set<Request>();
  let changedAt = Date.now();
  const note = (change: (request: Request) => void) => (request: Request) => {
    // A sheet listens to its server for as long as it is open.
    if (request.url().endsWith('/events')) return;
    change(request);
    changedAt = Date.now();
  };
  const over = note((request) => asked.delete(request));
  page.on(
    'request',
    note((request) => asked.add(request)),
  );
  page.on('requestfinished', over);
  page.on('requestfailed', over);
  return async () => {
    await until(
      () => asked.size === 0 && Date.now() - changedAt > QUIET_MS,
      (isQuiet) => isQuiet,
    );
  };
}

function standingOf(page: Page): () => Promise<void> {
  const quiet = quietOf(page);
  return async () => {
    await page.locator('h1').first().waitFor();
    await quiet();
    await until(
      () => page.locator(AWAITED).count(),
      (count) => count === 0,
    );
  };
}

interface AxeResult {
  readonly broken: string[];
  /** Rules that held somewhere on the page. */
  readonly looked: number;
}

export interface AxeScope {
  /** Absent: every rule. */
  readonly rules?: readonly string[];
  /** Selectors; absent: the whole page. */
  readonly within?: readonly string[];
}

/** What axe finds broken, and how much it looked at. */
export async function axe(page: Page, { rules, within }: AxeScope = {}): Promise<AxeResult> {
  if (!(await page.evaluate('"axe" in window'))) await page.evaluate(AXE);
  const context = within === undefined ? 'document' : JSON.stringify({ include: within.map((part) => [part]) });
  // Every element that a rule was content with would be described and sent: only how many rules held is wanted.
  const options = JSON.stringify({ resultTypes: ['violations'], ...(rules === undefined ? {} : { runOnly: rules }) });
  return await page.evaluate(`axe.run(${context}, ${options}).then(({ violations, passes }) => ({
    broken: violations.map(({ id, nodes }) => id + ': ' + nodes.map((node) => node.html.slice(0, 140)).join(' | ')),
    looked: passes.length,
  }))`);
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
