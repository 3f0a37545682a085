/**
 * Brings a fresh clone to a working state with nothing but Node and npm, and costs a few milliseconds
 * when there is nothing to do. Everything it says goes to stderr, so that stdout belongs to the command.
 */
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const STAMP = join(ROOT, 'node_modules', '.vaporwright-stamp');
const BUNDLE_STAMP = join(ROOT, 'dist', '.built');
const PAGES_STAMP = join(ROOT, 'dist', 'web', '.built');
const OLDEST_NODE = 20;

const say = (text) => process.stderr.write(`${text}\n`);

/** Stops with words when Node is too old, before anything else fails in a less readable way. */
export function requireNode(version = process.versions.node) {
  const major = Number(version.split('.')[0]);
  if (major >= OLDEST_NODE) return;
  throw new Error(`Node ${version} found, Node ${OLDEST_NODE} or newer expected. Install a newer Node and run again.`);
}

function run(command, args, what) {
  return new Promise((resolve, reject) => {
    const started = Date.now();
    say(`vaporwright: ${what} …`);
    // The child's stdout is sent to our stderr: stdout belongs to the command.
    const child = spawn(command, args, { cwd: ROOT, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' });
    const beat = setInterval(
      () => say(`vaporwright: still ${what} (${Math.round((Date.now() - started) / 1000)} s)`),
      15_000,
    );
    child.on('error', (error) => {
      clearInterval(beat);
      reject(new Error(`could not run ${command}: ${error.message}`));
    });
    child.on('exit', (code) => {
      clearInterval(beat);
      if (code === 0) resolve();
      else reject(new Error(`${command} ${args.join(' ')} ended with code ${code}`));
    });
  });
}

/** What `node_modules` must match: the lock file's content and the Node major (native parts differ by it). */
export function lockFingerprint(root = ROOT) {
  const lock = readFileSync(join(root, 'package-lock.json'));
  return `${createHash('sha256').update(lock).digest('hex')} node${process.versions.node.split('.')[0]}`;
}

/** True when someone ran npm by hand after the lock file last changed: nothing to do but leave our stamp. */
function isInstalledByHand() {
  const own = join(ROOT, 'node_modules', '.package-lock.json');
  if (!existsSync(own)) return false;
  const installedAt = statSync(own).mtimeMs;
  const isNewerThanStamp = !existsSync(STAMP) || installedAt > statSync(STAMP).mtimeMs;
  return isNewerThanStamp && installedAt >= statSync(join(ROOT, 'package-lock.json')).mtimeMs;
}

/** Installs the exact packages of the lock file when they are absent or belong to another lock file. */
export async function ensurePackages() {
  const wanted = lockFingerprint();
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted) return false;
  if (isInstalledByHand()) {
    writeFileSync(STAMP, wanted);
    return false;
  }
  await run(
    'npm',
    ['ci', '--no-audit', '--no-fund', '--loglevel=error'],
    'installing packages (once, under a minute with a good connection)',
  ).catch((error) => {
    throw new Error(`${error.message}\nThe packages could not be installed. Check the network, then run: npm ci`);
  });
  writeFileSync(STAMP, wanted);
  return true;
}

const isTest = (name) => /\.test\.tsx?$/.test(name) || name === 'goldens';

/** Newest change below a path; tests are no part of what is built. */
function newestSourceMs(path, skip = []) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  let newest = stat.mtimeMs;
  for (const name of readdirSync(path)) {
    const inner = join(path, name);
    if (!isTest(name) && !skip.includes(inner)) newest = Math.max(newest, newestSourceMs(inner, skip));
  }
  return newest;
}

const isFresh = (stamp, sourcesMs) => existsSync(stamp) && statSync(stamp).mtimeMs >= sourcesMs;

function leaveStamp(stamp, builtAt) {
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, builtAt.toISOString());
  // Of when the build began: what changed while it ran is not in it.
  utimesSync(stamp, builtAt, builtAt);
}

/** Bundles the command line into dist/ when a source is newer than the last bundle. */
export async function ensureBundle() {
  const sources = ['src', 'package.json', 'scripts/bundle.mjs'].map((name) =>
    newestSourceMs(join(ROOT, name), [join(ROOT, 'src/web')]),
  );
  if (isFresh(BUNDLE_STAMP, Math.max(...sources))) return false;
  const { bundle } = await import('./bundle.mjs');
  const builtAt = new Date();
  await bundle(ROOT);
  leaveStamp(BUNDLE_STAMP, builtAt);
  return true;
}

/** Builds the pages into dist/web when a source of theirs is newer than what is there. */
export async function ensurePages() {
  const config = join(ROOT, 'vite.config.ts');
  if (!existsSync(config)) return false;
  // What only the server or the command line uses cannot change the pages.
  const skip = ['src/cli', 'src/jobs', 'src/server', 'src/capture'].map((name) => join(ROOT, name));
  const sources = [
    'src',
    'src/jobs/record',
    'src/server/contract',
    'package.json',
    'vite.config.ts',
    'scripts/build-pages.mjs',
  ];
  const newest = Math.max(...sources.map((name) => newestSourceMs(join(ROOT, name), skip)));
  if (isFresh(PAGES_STAMP, newest)) return false;
  say('vaporwright: building the pages (once) …');
  const { buildPages } = await import('./build-pages.mjs');
  const builtAt = new Date();
  const aside = join(ROOT, `.dist-pages-${process.pid}`);
  const place = join(ROOT, 'dist', 'web');
  try {
    await buildPages(ROOT, aside);
    mkdirSync(dirname(place), { recursive: true });
    rmSync(place, { recursive: true, force: true });
    renameSync(aside, place);
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
  leaveStamp(PAGES_STAMP, builtAt);
  return true;
}

/** First the one without windows: it opens a page at less than half the cost, and shows the same. */
export const BROWSER_PATHS = [
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
];

/** The browser for the tests of report and pages: an explicit path in CHROMIUM wins. */
export function findBrowser() {
  const given = process.env.CHROMIUM;
  return [...(given ? [given] : []), ...BROWSER_PATHS].find((path) => existsSync(path));
}

const onPath = (program) =>
  (process.env.PATH ?? '').split(delimiter).some((folder) => folder !== '' && existsSync(join(folder, program)));
const POSTGRES = '/usr/lib/postgresql';
const hasPostgres = () =>
  existsSync(POSTGRES) && readdirSync(POSTGRES).some((version) => existsSync(join(POSTGRES, version, 'bin', 'initdb')));

/** What only the tests need of Debian: each package with what shows that it is there. */
const TEST_PACKAGES = [
  {
    name: 'chromium-headless-shell',
    why: 'the pages and the report are tried in a browser',
    isThere: () => findBrowser() !== undefined,
  },
  { name: 'poppler-utils', why: 'printed pages are read back', isThere: () => onPath('pdftotext') },
  {
    name: 'postgresql',
    why: "the store is tried on the system's PostgreSQL too",
    isThere: () => hasPostgres() || process.env.VAPORWRIGHT_NO_DEBIAN_POSTGRES !== undefined,
  },
];

/** Installs what the tests need of Debian when that is possible, else says what to run. */
export async function ensureTestPackages() {
  const missing = TEST_PACKAGES.filter(({ isThere }) => !isThere());
  if (missing.length === 0) return false;
  const names = missing.map(({ name }) => name);
  const advice = [
    `The tests need ${missing.map(({ name, why }) => `${name} (${why})`).join(', ')}.`,
    `Run: sudo apt-get update && sudo apt-get install -y --no-install-recommends ${names.join(' ')}`,
    'A browser elsewhere: set CHROMIUM to its path. No PostgreSQL of the system: set VAPORWRIGHT_NO_DEBIAN_POSTGRES=1.',
  ].join('\n');
  const hasApt = spawnSync('apt-get', ['--version'], { stdio: 'ignore' }).status === 0;
  if (!hasApt || process.getuid?.() !== 0) throw new Error(advice);
  process.env.DEBIAN_FRONTEND = 'noninteractive';
  try {
    await run('apt-get', ['-qq', 'update'], 'reading the package lists');
    await run(
      'apt-get',
      ['-qq', 'install', '-y', '--no-install-recommends', ...names],
      `installing ${names.join(', ')} for the tests`,
    );
  } catch (error) {
    throw new Error(`${error.message}\n${advice}`);
  }
  return true;
}

/** Runs a set-up step for a script; a failure is words on stderr and a non-zero end, not a stack. */
export async function prepare(...steps) {
  try {
    requireNode();
    for (const step of steps) await step();
  } catch (error) {
    say(`vaporwright: set-up failed. ${error.message}`);
    process.exit(1);
  }
}
