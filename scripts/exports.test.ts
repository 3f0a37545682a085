/** What the package offers to other programs can be loaded by the names it promises, and none of it needs Node. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const PURE = ['units', 'physics', 'system', 'simulation', 'recording', 'diagnosis', 'checks', 'readiness'];
const offered = Object.entries(
  (JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { exports: Record<string, string> }).exports,
);

test.each(offered)('%s leads to something in a pure room', (_, target) => {
  expect(PURE).toContain(target.split('/')[2]);
  if (!target.includes('*')) expect(existsSync(join(ROOT, target))).toBe(true);
  else
    expect(readdirSync(join(ROOT, dirname(target))).filter((name) => name.endsWith('.ts')).length).toBeGreaterThan(0);
});

test('the entries for a finding load and offer their function', async () => {
  // Names that only the exports map can resolve.
  const names = ['vaporwright/diagnosis', 'vaporwright/growing', 'vaporwright/recording/read-csv'];
  const [diagnosis, growing, reading] = await Promise.all(names.map((name) => import(/* @vite-ignore */ name)));
  expect(diagnosis.diagnose).toBeTypeOf('function');
  expect(growing.GrowingFinding).toBeTypeOf('function');
  expect(reading.readRecordingCsv).toBeTypeOf('function');
});
