/** What is measured in the browser. Times are the page's own clock, ms. The scripts run there, hence as texts. */
import type { Page } from 'playwright-core';
import { type PerFrame, withMainThread } from './main-thread.ts';

export interface Opening {
  /** From the page's first byte until the chart stands, everything included. */
  readonly fromStartMs: number;
  /** From the request for the samples until the chart stands. */
  readonly fromRequestMs: number;
  /** From the last byte of the samples until the chart stands. */
  readonly fromBytesMs: number;
  /** Longest time that the page could not react meanwhile. */
  readonly longestTaskMs: number;
}

/** A chart stands when the frame after the one that made it has been shown. */
const WATCH = `
  window.benchMarks = { shown: 0, longest: 0 };
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) benchMarks.longest = Math.max(benchMarks.longest, entry.duration);
  }).observe({ type: 'longtask', buffered: true });
  const look = () => {
    if (document.querySelector('.recording .lane-chart canvas') === null) {
      document.querySelector('#recordings')?.scrollIntoView();
      requestAnimationFrame(look);
      return;
    }
    requestAnimationFrame(() => requestAnimationFrame(() => { benchMarks.shown = performance.now(); }));
  };
  requestAnimationFrame(look);
`;

const READ = `(() => {
  const samples = performance.getEntriesByType('resource').find(({ name }) => name.includes('/samples'));
  return {
    fromStartMs: benchMarks.shown,
    fromRequestMs: benchMarks.shown - samples.startTime,
    fromBytesMs: benchMarks.shown - samples.responseEnd,
    longestTaskMs: benchMarks.longest,
  };
})()`;

/** Notes when the chart of the recording has been painted; runs before the page's own scripts. */
export const watchOpening = (page: Page): Promise<unknown> => page.addInitScript(WATCH);

const MOST_MS = 120_000;

export async function readOpening(page: Page): Promise<Opening> {
  await page.waitForFunction('benchMarks.shown > 0', undefined, { timeout: MOST_MS });
  return page.evaluate<Opening>(READ);
}

export interface Panning {
  readonly framesPerS: number;
  readonly medianMs: number;
  /** 95th percentile of the time between frames. */
  readonly p95Ms: number;
  /** Median time that the script and the painting commands of one frame take. */
  readonly workMs: number;
  readonly frames: number;
  readonly main: PerFrame;
}

const panScript = (frames: number): string => `(async () => {
  const surface = document.querySelector('.recording .lane-chart .u-over');
  const context = document.querySelector('.recording .lane-chart canvas').getContext('2d');
  let drawn = 0;
  const clear = context.clearRect.bind(context);
  context.clearRect = (...args) => { drawn++; clear(...args); };
  const middle = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
  const times = [];
  const work = [];
  for (let k = 0; k <= ${frames}; k++) {
    times.push(await new Promise((resolve) => requestAnimationFrame(resolve)));
    const deltaX = Math.floor(k / 40) % 2 === 0 ? 10 : -10;
    const before = performance.now();
    surface.dispatchEvent(new WheelEvent('wheel', { deltaX, bubbles: true, cancelable: true }));
    // The drawing is done before the next task of the same turn.
    await Promise.resolve();
    await Promise.resolve();
    work.push(performance.now() - before);
  }
  delete context.clearRect;
  if (drawn < ${frames}) throw new Error('only ' + drawn + ' of ${frames} frames were drawn anew');
  const steps = times.slice(1).map((t, k) => t - times[k]);
  const sorted = [...steps].sort((a, b) => a - b);
  return {
    framesPerS: 1000 * steps.length / (times.at(-1) - times[0]),
    medianMs: middle(steps),
    p95Ms: sorted[Math.floor(sorted.length * 0.95)],
    workMs: middle(work),
    frames: steps.length,
  };
})()`;

/** Every frame moves the view by a hundredth of itself, back and forth, and counts only when it was drawn anew. */
export const measurePanning = (page: Page, frames: number): Promise<Panning> =>
  withMainThread<Panning>(page, panScript(frames));
