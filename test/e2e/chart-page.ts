/** A job page with a real recording, for tests of chart and finding. */
import type { Browser, Locator, Page } from 'playwright-core';
import type { Job } from '../../src/jobs/record/job.ts';
import { answerRecordings, EXAMPLE } from './chart-answers.ts';
import { type FakeServer, startFakeServer } from './pages-fake-server.ts';
import { quietOf } from './pages-open.ts';
import { SAMPLE_ID, sampleJob } from './pages-sample-job.ts';

export interface OpenChart {
  readonly page: Page;
  readonly server: FakeServer;
  /** The job as the server has it now. */
  job(): Job;
  close(): Promise<void>;
}

export interface ChartView {
  readonly width?: number;
  readonly scheme?: 'light' | 'dark';
  readonly language?: 'en' | 'de';
  readonly hasTouch?: boolean;
  /** See `startFakeServer`: for tests that look at neither the drawing nor the next check. */
  readonly areWorkersSilent?: boolean;
}

export async function openChart(browser: Browser, view: ChartView = {}, first: Job = sampleJob): Promise<OpenChart> {
  const server = await startFakeServer([first], { areWorkersSilent: view.areWorkersSilent ?? false });
  const context = await browser.newContext({
    viewport: { width: view.width ?? 1280, height: 900 },
    colorScheme: view.scheme ?? 'light',
    locale: view.language === 'de' ? 'de-DE' : 'en-GB',
    serviceWorkers: 'block',
    hasTouch: view.hasTouch ?? false,
  });
  const page = await context.newPage();
  const job = (): Job => {
    const found = server.jobs.get(SAMPLE_ID);
    if (found === undefined) throw new Error('the job is gone');
    return found;
  };
  await answerRecordings(page, job, EXAMPLE);
  const quiet = quietOf(page);
  await page.goto(`${server.address}/jobs/${SAMPLE_ID}`);
  await page.locator('#recordings').scrollIntoViewIfNeeded();
  // Parts that come late move those below them, and the mouse would miss.
  await quiet();
  return {
    page,
    server,
    job,
    close: async () => {
      await context.close();
      await server.stop();
    },
  };
}

/** What a person reads there: nothing that is hidden. */
export const wordsOf = async (place: Locator): Promise<string> => (await place.allInnerTexts()).join('\n');

/** Waits until something holds; what it was last is told when it never does. */
export async function eventually<T>(read: () => T | Promise<T>, holds: (value: T) => boolean): Promise<T> {
  const until = Date.now() + 30_000;
  for (;;) {
    const value = await read();
    if (holds(value)) return value;
    if (Date.now() > until) throw new Error(`still ${JSON.stringify(value)}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}
