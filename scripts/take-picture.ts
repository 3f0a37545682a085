/**
 * Takes the pictures of the README: the real workbench with its demo shop on a data folder of its own, and the report
 * of the shipped example. Names on the command line take only those (`npm run picture -- list-light`).
 */
import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import type { JobSummary } from '../src/jobs/record/job.ts';
import { openBrowser } from '../test/e2e/browser.ts';
import { smallPng } from './small-png.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const FOLDER = join(ROOT, 'docs', 'pictures');
const SCHEMES = ['light', 'dark'] as const;
const WIDE = 1280;
const NARROW = 390;

const wanted = process.argv.slice(2);
const isWanted = (name: string): boolean => wanted.length === 0 || wanted.includes(name);

async function keep(page: Page, name: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  const bytes = smallPng(await page.screenshot({ animations: 'disabled', caret: 'hide' }));
  writeFileSync(join(FOLDER, `${name}.png`), bytes);
  console.log(`docs/pictures/${name}.png  ${bytes.length} bytes`);
}

/**
 * Brings the top of a part to the top of the window and waits for what it shows. Charts and drawing are laid out when they
 * come near the window and push the part away, so it is brought back until it stays.
 */
async function showFrom(page: Page, part: string, ...shown: readonly string[]): Promise<void> {
  for (const each of shown) await page.locator(each).first().waitFor();
  const place = page.locator(part).first();
  let before = Number.NaN;
  for (let stayed = 0; stayed < 3; ) {
    await place.evaluate((element) => element.scrollIntoView({ block: 'start' }));
    await page.waitForTimeout(700);
    const { y, height } = await place.evaluate((element) => {
      const { y, height } = element.getBoundingClientRect();
      return { y: y + window.scrollY, height };
    });
    stayed = y + height === before ? stayed + 1 : 0;
    before = y + height;
  }
}

interface Picture {
  readonly name: string;
  /** The car of the demo job whose pages are shown; the address of a job's page is put before the path. */
  readonly vehicle?: string;
  readonly path: string;
  readonly height: number;
  readonly show: (page: Page) => Promise<void>;
}

const SHEET: Picture = {
  name: 'sheet',
  vehicle: 'Blue saloon',
  path: '',
  height: 1400,
  show: (page) => showFrom(page, '#finding', '#finding .finding-sentence', '#finding canvas', 'aside.side svg'),
};

const PICTURES: readonly Picture[] = [
  { name: 'list', path: '/', height: 1010, show: (page) => showFrom(page, 'body', '.jobs-table .demo-mark') },
  SHEET,
  {
    name: 'next-check',
    vehicle: 'Blue saloon',
    path: '',
    height: 1100,
    show: async (page) => {
      await showFrom(page, '#next-check', '#next-check .next-step', '#next-check h4');
      // The plan gets better while it is looked at.
      await page.waitForTimeout(4000);
    },
  },
  { name: 'drawing', path: '/system', height: 1400, show: (page) => showFrom(page, 'body', 'main svg') },
  {
    name: 'hand-over',
    vehicle: 'Red hatchback',
    path: '/hand-over',
    height: 1100,
    show: async (page) => {
      await page.frameLocator('iframe').locator('h1').first().waitFor();
      await showFrom(page, 'body', 'iframe');
    },
  },
];

/** The server as `npm start` starts it, on a new data folder, so that the demo shop is there. */
async function withServer(run: (address: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'vaporwright-picture-'));
  // Where this runs as root, the database runs as a user of its own, who has to get in.
  chmodSync(folder, 0o711);
  const child = spawn(
    process.execPath,
    [join(ROOT, 'scripts', 'start.mjs'), 'serve', '--data', join(folder, 'data'), '--port', '0'],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  const ended = new Promise<void>((resolve) => {
    child.on('exit', () => resolve());
  });
  try {
    const address = await new Promise<string>((resolve, reject) => {
      let said = '';
      child.stdout.on('data', (piece: Buffer) => {
        said += piece;
        const found = /^Vaporwright is open at (http:\S+)$/m.exec(said)?.[1];
        if (found !== undefined) resolve(found);
      });
      void ended.then(() => reject(new Error(`the server ended: ${said}`)));
    });
    await run(address);
  } finally {
    child.kill('SIGINT');
    await ended;
    rmSync(folder, { recursive: true, force: true });
  }
}

async function takeWorkbench(browser: Browser, address: string): Promise<void> {
  const { jobs } = (await (await fetch(`${address}/api/v1/jobs?limit=200`)).json()) as {
    readonly jobs: readonly JobSummary[];
  };
  const pathOf = ({ vehicle, path }: Picture): string => {
    if (vehicle === undefined) return path;
    const job = jobs.find((each) => each.demo && each.vehicle === vehicle);
    if (job === undefined) throw new Error(`the demo shop has no ${vehicle}`);
    return `/jobs/${job.id}${path}`;
  };
  const take = async (name: string, picture: Picture, width: number, colorScheme: 'light' | 'dark'): Promise<void> => {
    if (!isWanted(name)) return;
    const context = await browser.newContext({
      viewport: { width, height: picture.height },
      colorScheme,
      locale: 'en-GB',
      serviceWorkers: 'block',
    });
    const page = await context.newPage();
    await page.goto(address + pathOf(picture));
    await picture.show(page);
    await keep(page, name);
    await context.close();
  };
  for (const picture of PICTURES) {
    for (const scheme of SCHEMES) await take(`${picture.name}-${scheme}`, picture, WIDE, scheme);
  }
  await take('sheet-narrow', { ...SHEET, height: 1000 }, NARROW, 'light');
}

async function takeReport(browser: Browser): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'vaporwright-picture-'));
  try {
    const made = spawnSync(process.execPath, [join(ROOT, 'bin/vaporwright.mjs'), 'demo', '--out', folder], {
      stdio: 'inherit',
    });
    if (made.status !== 0) throw new Error('the demo failed');
    const context = await browser.newContext({ viewport: { width: 1080, height: 1500 }, colorScheme: 'light' });
    const page = await context.newPage();
    await page.goto(pathToFileURL(join(folder, 'report.html')).href);
    await keep(page, 'report');
  } finally {
    rmSync(folder, { recursive: true });
  }
}

mkdirSync(FOLDER, { recursive: true });
const browser = await openBrowser();
try {
  if (isWanted('report')) await takeReport(browser);
  if (wanted.some((name) => name !== 'report') || wanted.length === 0) {
    await withServer((address) => takeWorkbench(browser, address));
  }
} finally {
  await browser.close();
}
