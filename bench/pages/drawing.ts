/** The drawing while it plays and while the size of a fault is dragged: frames, and the main thread's time for each. */
import type { Browser } from 'playwright-core';
import { type PerFrame, withMainThread } from './main-thread.ts';

interface DrawingCase {
  readonly width: number;
  /** The sound system beside the faulty one. */
  readonly isPair: boolean;
}

export const DRAWING_CASES: readonly DrawingCase[] = [
  { width: 1280, isPair: false },
  { width: 1280, isPair: true },
  { width: 390, isPair: false },
];

interface Frames {
  readonly frames: number;
  readonly framesPerS: number;
  readonly main: PerFrame;
}

export interface DrawingFigures extends DrawingCase {
  readonly playing: Frames;
  readonly dragging: Frames & {
    /** Share of the slider's movements that the trace followed with a run of its own. */
    readonly followed: number;
  };
}

const FRAMES = 300;

const PLAY = `new Promise((resolve) => {
  const from = performance.now();
  let frames = 0;
  const look = () => {
    frames++;
    if (frames < ${FRAMES}) requestAnimationFrame(look);
    else resolve({ frames, framesPerS: 1000 * frames / (performance.now() - from) });
  };
  requestAnimationFrame(look);
})`;

/** Moves the slider at every frame by as much as a hand does, there and back. */
const DRAG = `new Promise((resolve) => {
  const slider = document.querySelector('.fault-form input[type=range]');
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
  let drawn = 0;
  const watch = new MutationObserver(() => { drawn++; });
  watch.observe(document.querySelector('.trace svg .own'), { attributes: true, attributeFilter: ['d'] });
  const from = performance.now();
  const most = Number(slider.max);
  let frames = 0;
  let moves = 0;
  const move = () => {
    frames++;
    const there = String(Math.round(most * (0.5 + 0.4 * Math.sin(frames / 30))));
    if (there !== slider.value) {
      moves++;
      set.call(slider, there);
      slider.dispatchEvent(new Event('input', { bubbles: true }));
    }
    if (frames < ${FRAMES}) return void requestAnimationFrame(move);
    watch.disconnect();
    resolve({ frames, framesPerS: 1000 * frames / (performance.now() - from), followed: Math.min(1, drawn / moves) });
  };
  requestAnimationFrame(move);
})`;

const press = (name: string): string =>
  `[...document.querySelectorAll('.transport button')].find((b) => b.textContent === '${name}').click()`;

/** Opens the system page at a width and measures both. */
export async function measureDrawing(browser: Browser, address: string, chosen: DrawingCase): Promise<DrawingFigures> {
  const context = await browser.newContext({
    viewport: { width: chosen.width, height: 900 },
    locale: 'en-GB',
    serviceWorkers: 'block',
  });
  try {
    const page = await context.newPage();
    await page.goto(`${address}/system`);
    await page.locator('.trace svg .own').waitFor();
    const beside = page.getByRole('checkbox');
    if ((await beside.isChecked()) !== chosen.isPair) await beside.click();
    await page.locator('.drawing').last().scrollIntoViewIfNeeded();
    await page.waitForTimeout(1500);
    await page.evaluate(press('Play'));
    await page.waitForTimeout(500);
    const playing = await withMainThread<DrawingFigures['playing']>(page, PLAY);
    await page.evaluate(press('Pause'));
    await page.waitForTimeout(500);
    const dragging = await withMainThread<DrawingFigures['dragging']>(page, DRAG);
    return { ...chosen, playing, dragging };
  } finally {
    await context.close();
  }
}
