/**
 * Opening and panning of a long recording, and the living drawing, in Chromium, on the built pages.
 *
 * `npx tsx bench/pages/pages.ts [samples] [folder of built pages]`: builds the pages unless a folder is given, opens a job
 * with one recording of 13 channels, measures how long the chart takes to stand and how many frames a second it pans
 * at, for views of different width; then the drawing while it plays and while the size of a fault is dragged. Frames a
 * second need a quiet machine; the main thread's own time for each frame does not. Prints a table and one JSON line.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { encodeSamples } from '../../src/server/contract/samples.ts';
import { DRAWING_CASES, type DrawingFigures, measureDrawing } from './drawing.ts';
import { longPhases, longRecording } from './long-recording.ts';
import { measurePanning, type Opening, type Panning, readOpening, watchOpening } from './measure.ts';
import { standIn } from './stand-in.ts';

const BAR = { openMs: 2000, framesPerS: 50, drawingFramesPerS: 60, mainMs: 6 };
/** A frame that the bench's own count begins or ends with is no frame lost. */
const ROUNDING = 0.98;
const FRAMES = 240;
const RUNS = 3;
/** Views as shares of the recording: zoomed in by so many halvings. */
const HALVINGS = [1, 4, 8, 12];

const samples = Number(process.argv[2] ?? 1_000_000);
const given = process.argv[3];
const made = given === undefined ? mkdtempSync(join(tmpdir(), 'vaporwright-pages-')) : undefined;
const folder = given ?? made!;
if (made !== undefined) {
  process.stderr.write('building the pages\n');
  await build({
    configFile: fileURLToPath(new URL('../../vite.config.ts', import.meta.url)),
    logLevel: 'error',
    build: { outDir: made, emptyOutDir: true },
  });
}

const recording = longRecording(samples);
const phases = longPhases(samples);
const bytes = encodeSamples(recording, {
  label: recording.label,
  procedure: 'vacuum-draw',
  phases,
  foundPhases: phases,
  quality: [],
  warnings: [],
});

const { findBrowser } = (await import(new URL('../../scripts/setup.mjs', import.meta.url).href)) as {
  findBrowser: () => string | undefined;
};
const executablePath = findBrowser();
if (executablePath === undefined) throw new Error('no Chromium: install one, or run npm test, which says how');
const server = await standIn(folder, bytes);
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });

async function openOnce(): Promise<{
  readonly page: Page;
  readonly opening: Opening;
  readonly close: () => Promise<void>;
}> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, serviceWorkers: 'block' });
  const page = await context.newPage();
  await watchOpening(page);
  await page.goto(`${server.jobPage}#recordings`);
  return { page, opening: await readOpening(page), close: () => context.close() };
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
const openings: Opening[] = [];
const drawings: DrawingFigures[] = [];
const pannings: { readonly halvings: number; readonly panning: Panning }[] = [];
try {
  for (let run = 0; run < RUNS; run++) {
    const { page, opening, close } = await openOnce();
    openings.push(opening);
    if (run === RUNS - 1) {
      await page.locator('.recording .lane-chart .plot').scrollIntoViewIfNeeded();
      let done = 0;
      for (const halvings of HALVINGS) {
        for (; done < halvings; done++) await page.locator('.recording .chart-tools button').first().click();
        pannings.push({ halvings, panning: await measurePanning(page, FRAMES) });
      }
    }
    await close();
  }
  for (const chosen of DRAWING_CASES)
    drawings.push(await measureDrawing(browser, new URL(server.jobPage).origin, chosen));
} finally {
  await browser.close();
  server.close();
  if (made !== undefined) rmSync(made, { recursive: true });
}

const channels = Object.keys(recording.channels).length;
const opened = median(openings.map(({ fromRequestMs }) => fromRequestMs));
const slowest = Math.min(...pannings.map(({ panning }) => panning.framesPerS));
const row = (name: string, value: string, note = ''): void =>
  console.log(`${name.padEnd(46)} ${value.padStart(10)}  ${note}`);
console.log(
  `${samples} samples, ${channels} channels, ${(bytes.byteLength / 1e6).toFixed(0)} MB, median of ${RUNS} openings`,
);
row('samples asked for until the chart stands', `${opened.toFixed(0)} ms`, `bar ${BAR.openMs} ms`);
row('samples there until the chart stands', `${median(openings.map((o) => o.fromBytesMs)).toFixed(0)} ms`);
row('page asked for until the chart stands', `${median(openings.map((o) => o.fromStartMs)).toFixed(0)} ms`);
row('longest task meanwhile', `${median(openings.map((o) => o.longestTaskMs)).toFixed(0)} ms`);
for (const { halvings, panning } of pannings)
  row(
    `panning, ${Math.round(samples / 2 ** halvings)} samples in sight`,
    `${panning.framesPerS.toFixed(1)} /s`,
    `bar ${BAR.framesPerS} /s; frame ${panning.medianMs.toFixed(1)} ms, 95 % ${panning.p95Ms.toFixed(1)} ms, of it drawing ${panning.workMs.toFixed(1)} ms; main thread ${panning.main.taskMs.toFixed(1)} ms`,
  );
for (const { width, isPair, playing, dragging } of drawings) {
  const where = `${width} px${isPair ? ', two side by side' : ''}`;
  const parts = ({ main }: DrawingFigures['playing']): string =>
    `main thread ${main.taskMs.toFixed(1)} ms a frame, bar ${BAR.mainMs} ms: script ${main.scriptMs.toFixed(1)}, layout ${main.layoutMs.toFixed(1)}, style ${main.styleMs.toFixed(1)}`;
  row(`drawing plays, ${where}`, `${playing.framesPerS.toFixed(1)} /s`, parts(playing));
  row(
    `size dragged, ${where}`,
    `${dragging.framesPerS.toFixed(1)} /s`,
    `${parts(dragging)}; the trace followed ${(100 * dragging.followed).toFixed(0)} % of the movements`,
  );
}
const moving = drawings.flatMap(({ playing, dragging }) => [playing, dragging]);
const mainMs = Math.max(
  ...moving.map(({ main }) => main.taskMs),
  ...pannings.map(({ panning }) => panning.main.taskMs),
);
const slowestDrawing = Math.min(...moving.map(({ framesPerS }) => framesPerS));
console.log(
  JSON.stringify({
    bench: 'pages',
    samples,
    channels,
    openMs: opened,
    openings,
    slowestFramesPerS: slowest,
    pannings,
    drawings,
    mainMs,
    slowestDrawingFramesPerS: slowestDrawing,
    bar: BAR,
    isMet:
      opened < BAR.openMs &&
      slowest >= BAR.framesPerS &&
      slowestDrawing >= ROUNDING * BAR.drawingFramesPerS &&
      mainMs < BAR.mainMs,
  }),
);
