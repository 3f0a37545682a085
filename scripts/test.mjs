/**
 * `npm test`: the whole gate. Static checks first, then every test, then one closing line with the
 * counts of what really ran. Arguments go to the test runner (`npm test -- src/units` runs a part).
 */
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { ensureBundle, ensurePackages, ensurePages, ensureTestPackages, prepare, ROOT } from './setup.mjs';

const bin = (name, file) => join(ROOT, 'node_modules', name, file);
/** The native compiler checks in a third of the time; tools that read TypeScript themselves still need the other one. */
const TSC = bin('typescript-native', 'bin/tsc');
const STATIC_CHECKS = [
  ['types', TSC, ['-p', 'tsconfig.json']],
  ['format and lint', bin('@biomejs/biome', 'bin/biome'), ['check', '--error-on-warnings', '--reporter=summary']],
  ['types of the pure rooms (neither Node nor DOM)', TSC, ['-p', 'tsconfig.pure.json']],
  ['types of the pages', TSC, ['-p', 'tsconfig.web.json']],
  ['types of the browser tests', TSC, ['-p', 'tsconfig.e2e.json']],
  [
    'room rules',
    bin('dependency-cruiser', 'bin/dependency-cruise.mjs'),
    ['src', '--config', '.dependency-cruiser.cjs'],
  ],
  ['unused files, exports and packages', bin('knip', 'bin/knip.js'), ['--no-progress']],
];

function node(args, stdio = 'inherit') {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, args, { cwd: ROOT, stdio });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream?.on('data', (piece) => {
        said += piece;
      });
    }
    child.on('close', (code) => resolve({ code: code ?? 1, said }));
  });
}

let staticPassed = 0;
const staticFailed = [];
/** As many at once as there are cores; each says its words in one piece. */
async function checkStatically() {
  const waiting = [...STATIC_CHECKS];
  const lane = async () => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const [name, file, args] = next;
      const { code, said } = await node([file, ...args], ['ignore', 'pipe', 'pipe']);
      if (code === 0) staticPassed += 1;
      else staticFailed.push(name);
      console.log(`\n== ${name}${code === 0 ? '' : ': FAILED'}\n${said.trim()}`);
    }
  };
  await Promise.all(Array.from({ length: availableParallelism() }, lane));
}

await prepare(ensurePackages);
// What the tests need is built, and installed, while the sources are looked at.
await Promise.all([checkStatically(), prepare(ensureTestPackages, ensureBundle, ensurePages)]);

console.log('\n== tests');
const results = join(ROOT, '.cache', 'test-results.json');
mkdirSync(join(ROOT, '.cache'), { recursive: true });
rmSync(results, { force: true });
const { code: vitestCode } = await node([
  bin('vitest', 'vitest.mjs'),
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${results}`,
  ...process.argv.slice(2),
]);

let passed = staticPassed;
let failed = staticFailed.length;
let runnerFailed = vitestCode !== 0;
try {
  const report = JSON.parse(readFileSync(results, 'utf8'));
  passed += report.numPassedTests;
  failed += report.numFailedTests;
  // A file that cannot even be loaded has no tests to count; it counts as one failure.
  const brokenFiles = report.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  );
  failed += brokenFiles.length;
  if (report.numPassedTests === 0) runnerFailed = true;
  const skipped = report.numPendingTests + report.numTodoTests;
  console.log(
    `\ntests: ${report.numPassedTests} passed, ${report.numFailedTests} failed, ${skipped} skipped; ` +
      `files that did not load: ${brokenFiles.length}; static checks: ${staticPassed} passed` +
      (staticFailed.length > 0 ? `, failed: ${staticFailed.join('; ')}` : ''),
  );
} catch (error) {
  runnerFailed = true;
  console.log(`\nThe test runner left no results (${error.message}).`);
}
if (runnerFailed && failed === 0) failed = 1;
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
