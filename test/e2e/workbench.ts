/** The real workbench as `npm start` starts it, with data of its own, and a browser before it. */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import type { Job, JobSummary } from '../../src/jobs/record/job.ts';
import { openBrowser } from './browser.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
export const EXAMPLES = join(ROOT, 'examples');
/** A leak self-test of a simulated car with a hole of 0.62 mm at the neck (`examples/small-leak.scenario.json`). */
export const LEAK_CSV = join(EXAMPLES, 'leak-self-test.csv');
/** Pages wait for findings; the machine may be busy. */
export const PATIENCE_MS = 90_000;

export interface View {
  readonly width?: number;
  readonly scheme?: 'light' | 'dark';
  readonly language?: 'en-GB' | 'de-DE';
  readonly serviceWorkers?: 'allow' | 'block';
  readonly hasTouch?: boolean;
}

export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Faults of the page's own script and of its policy, as the console was told. */
  readonly faults: readonly string[];
  /** Hosts that anything was asked of. */
  readonly hosts: ReadonlySet<string>;
}

export interface Workbench {
  readonly address: string;
  readonly browser: Browser;
  /** Runs with a page of its own (cookies, storage and all), and fails on any fault of the pages. */
  with(view: View, run: (opened: Opened) => Promise<void>): Promise<void>;
  jobs(): Promise<readonly JobSummary[]>;
  job(id: string): Promise<Job>;
  /** Anything else of the API, read only. */
  get(path: string): Promise<Response>;
  close(): Promise<void>;
}

interface Server {
  readonly child: ChildProcess;
  readonly address: string;
  readonly ended: Promise<void>;
}

/** Resolves when the address has been printed. */
function startServer(dataFolder: string, args: readonly string[]): Promise<Server> {
  const child = spawn(
    process.execPath,
    [join(ROOT, 'scripts/start.mjs'), 'serve', '--data', dataFolder, '--port', '0', ...args],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  let said = '';
  const ended = new Promise<void>((resolve) => {
    child.on('exit', () => resolve());
  });
  return new Promise((resolve, reject) => {
    const hear = (piece: Buffer): void => {
      said += piece;
      const address = /^Vaporwright is open at (http:\S+)$/m.exec(said)?.[1];
      if (address !== undefined) resolve({ child, address, ended });
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    void ended.then(() => reject(new Error(`the server ended: ${said}`)));
  });
}

export async function openWorkbench(...args: readonly string[]): Promise<Workbench> {
  const folder = mkdtempSync(join(tmpdir(), 'vaporwright-workbench-'));
  // The database runs as a user of its own where the tests run as root.
  chmodSync(folder, 0o711);
  const [server, browser] = await Promise.all([startServer(join(folder, 'data'), args), openBrowser()]);
  const { address, child, ended } = server;
  const get = (path: string): Promise<Response> => fetch(`${address}/api/v1${path}`);
  return {
    address,
    browser,
    get,
    jobs: async () => ((await (await get('/jobs?limit=200')).json()) as { jobs: JobSummary[] }).jobs,
    job: async (id) => (await (await get(`/jobs/${id}`)).json()) as Job,
    with: (view, run) => withPage(browser, view, run),
    close: async () => {
      await browser.close();
      child.kill('SIGINT');
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function withPage(browser: Browser, view: View, run: (opened: Opened) => Promise<void>): Promise<void> {
  const context = await browser.newContext({
    viewport: { width: view.width ?? 1280, height: 900 },
    colorScheme: view.scheme ?? 'light',
    locale: view.language ?? 'en-GB',
    serviceWorkers: view.serviceWorkers ?? 'block',
    hasTouch: view.hasTouch ?? false,
  });
  context.setDefaultTimeout(PATIENCE_MS);
  const faults: string[] = [];
  const hosts = new Set<string>();
  context.on('request', (request) => hosts.add(new URL(request.url()).host));
  context.on('weberror', (error) => faults.push(error.error().message));
  context.on('console', (message) => {
    if (message.type() === 'error' && /policy|react|uncaught/i.test(message.text())) faults.push(message.text());
  });
  try {
    await run({ context, page: await context.newPage(), faults, hosts });
  } finally {
    await context.close();
  }
  if (faults.length > 0) throw new Error(`faults of the page: ${faults.join('\n')}`);
}

/** Drops files on a part of the page, as from a folder's window. */
export async function dropFiles(page: Page, place: string, paths: readonly string[]): Promise<void> {
  const data = await page.evaluateHandle(
    (files) => {
      const transfer = new DataTransfer();
      for (const { name, base64 } of files) {
        transfer.items.add(new File([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))], name));
      }
      return transfer;
    },
    paths.map((path) => ({ name: path.split('/').at(-1) ?? path, base64: readFileSync(path, 'base64') })),
  );
  await page.dispatchEvent(place, 'dragover', { dataTransfer: data });
  await page.dispatchEvent(place, 'drop', { dataTransfer: data });
}

/** Id of the job whose sheet is open. */
export async function openedId(page: Page): Promise<string> {
  await page.waitForURL('**/jobs/*');
  const id = /\/jobs\/([^/?#]+)/.exec(page.url())?.[1];
  if (id === undefined) throw new Error(`no job at ${page.url()}`);
  return id;
}

/** The text of a PDF, page after page. */
export function pdfText(bytes: Uint8Array): string {
  const folder = mkdtempSync(join(tmpdir(), 'vaporwright-pdf-'));
  try {
    const path = join(folder, 'printed.pdf');
    writeFileSync(path, bytes);
    return execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Waits until something holds; tells what it was last when it never does. */
export async function until<T>(read: () => T | Promise<T>, holds: (value: T) => boolean): Promise<T> {
  const end = Date.now() + PATIENCE_MS;
  for (;;) {
    const value = await read();
    if (holds(value)) return value;
    if (Date.now() > end) throw new Error(`still ${JSON.stringify(value)?.slice(0, 2000)}`);
    await new Promise((wait) => setTimeout(wait, 50));
  }
}
