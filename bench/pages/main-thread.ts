/**
 * What a page asks of its main thread, in that thread's own time: a busy machine makes frames late, not this number larger.
 * Painting onto the screen is other threads' work and is not in it.
 */
import type { CDPSession, Page } from 'playwright-core';

/** The main thread's time for each frame, ms. */
export interface PerFrame {
  /** All of it: script, style, layout, and handing over what is to be painted. */
  readonly taskMs: number;
  readonly scriptMs: number;
  readonly layoutMs: number;
  readonly styleMs: number;
}

const METRICS = {
  taskMs: 'TaskDuration',
  scriptMs: 'ScriptDuration',
  layoutMs: 'LayoutDuration',
  styleMs: 'RecalcStyleDuration',
} as const satisfies Record<keyof PerFrame, string>;

async function spentMs(session: CDPSession): Promise<PerFrame> {
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name: string): number => 1000 * (metrics.find((metric) => metric.name === name)?.value ?? Number.NaN);
  return {
    taskMs: of(METRICS.taskMs),
    scriptMs: of(METRICS.scriptMs),
    layoutMs: of(METRICS.layoutMs),
    styleMs: of(METRICS.styleMs),
  };
}

/** Runs a script of the page that lives through frames and says how many; what it cost stands beside its answer. */
export async function withMainThread<T extends { readonly frames: number }>(
  page: Page,
  script: string,
): Promise<T & { readonly main: PerFrame }> {
  const session = await page.context().newCDPSession(page);
  try {
    await session.send('Performance.enable', { timeDomain: 'threadTicks' });
    const before = await spentMs(session);
    const answer = await page.evaluate<T>(script);
    const after = await spentMs(session);
    const each = (name: keyof PerFrame): number => (after[name] - before[name]) / answer.frames;
    return {
      ...answer,
      main: {
        taskMs: each('taskMs'),
        scriptMs: each('scriptMs'),
        layoutMs: each('layoutMs'),
        styleMs: each('styleMs'),
      },
    };
  } finally {
    await session.detach();
  }
}
