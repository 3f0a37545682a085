/** Takes the picture of the real report of the shipped example for the README. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { openBrowser } from '../test/e2e/browser.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'vaporwright-picture-'));
const made = spawnSync(process.execPath, [join(root, 'bin/vaporwright.mjs'), 'demo', '--out', folder], {
  stdio: 'inherit',
});
if (made.status !== 0) throw new Error('the demo failed');

mkdirSync(join(root, 'docs/pictures'), { recursive: true });
const browser = await openBrowser();
const context = await browser.newContext({ viewport: { width: 1080, height: 1500 }, colorScheme: 'light' });
const page = await context.newPage();
await page.goto(pathToFileURL(join(folder, 'report.html')).href);
await page.evaluate(() => document.fonts.ready);
await page.screenshot({ path: join(root, 'docs/pictures/report.png') });
await browser.close();
rmSync(folder, { recursive: true });
console.log('Written: docs/pictures/report.png');
