/**
 * `npm run fuzz -- [seconds] [seed] [processes]`: fuzzes the parsers of what comes from a bus, 60 s by default, a process for
 * each core. Ends with the number of inputs, and with an error when one of them broke a rule.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { ensurePackages, prepare, ROOT } from './setup.mjs';

const [seconds = '60', seed = String(Date.now() % 1e9), processes = String(availableParallelism())] =
  process.argv.slice(2);
const corpus = join(ROOT, 'test/bus/corpus');

await prepare(ensurePackages);
const { build } = await import('esbuild');
const bundled = join(ROOT, '.cache', `fuzz-${process.pid}.mjs`);
mkdirSync(join(ROOT, '.cache'), { recursive: true });
// Bundled first: a loader that keeps the names of functions costs a fifth of the inputs.
await build({
  absWorkingDir: ROOT,
  entryPoints: ['bench/bus/fuzz.ts'],
  outfile: bundled,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  packages: 'external',
  logLevel: 'warning',
});

function run(k) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [bundled, seconds, String(Number(seed) + k), corpus], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    let said = '';
    child.stdout.on('data', (piece) => {
      said += piece;
    });
    child.on('close', (code) => {
      const lines = said.trim().split('\n');
      for (const line of lines.slice(0, -1)) console.log(line);
      try {
        resolve({ code, result: JSON.parse(lines.at(-1) ?? '') });
      } catch {
        resolve({ code: code || 1, result: undefined });
      }
    });
  });
}

const runs = await Promise.all(Array.from({ length: Number(processes) }, (_, k) => run(k)));
rmSync(bundled, { force: true });
const sum = (read) => runs.reduce((total, { result }) => total + (result === undefined ? 0 : read(result)), 0);
const capture = sum(({ inputs }) => inputs.capture);
const slcan = sum(({ inputs }) => inputs.slcan);
const broken = sum((result) => result.broken);
const failed = runs.filter(({ code }) => code !== 0).length;
console.log(
  `fuzzing for ${seconds} s from seed ${seed}: ${capture + slcan} inputs (${capture} captures, ${slcan} pieces of slcan), ${broken} broke a rule`,
);
if (failed > 0) console.log(`${failed} of ${runs.length} processes failed`);
process.exitCode = failed === 0 && capture > 0 && slcan > 0 ? 0 : 1;
