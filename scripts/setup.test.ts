import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

interface Setup {
  requireNode(version?: string): void;
  lockFingerprint(root?: string): string;
}
const setup = (await import(new URL('setup.mjs', import.meta.url).href)) as Setup;

describe('Node', () => {
  test.each(['18.20.4', '16.0.0'])('%s is refused in words', (version) => {
    expect(() => setup.requireNode(version)).toThrow(`Node ${version} found, Node 20 or newer expected`);
  });
  test.each(['20.0.0', '22.11.0', '100.1.0'])('%s is taken', (version) => {
    expect(() => setup.requireNode(version)).not.toThrow();
  });
});

test('the stamp of installed packages changes with the lock file', () => {
  const folder = mkdtempSync(join(tmpdir(), 'vaporwright-lock-'));
  writeFileSync(join(folder, 'package-lock.json'), '{"a":1}');
  const before = setup.lockFingerprint(folder);
  expect(setup.lockFingerprint(folder)).toBe(before);
  writeFileSync(join(folder, 'package-lock.json'), '{"a":2}');
  expect(setup.lockFingerprint(folder)).not.toBe(before);
  rmSync(folder, { recursive: true });
});

test('a clone whose packages cannot be installed says so and what to run, on stderr only', () => {
  const folder = mkdtempSync(join(tmpdir(), 'vaporwright-clone-'));
  for (const name of ['scripts', 'bin', 'package.json'])
    cpSync(join(root, name), join(folder, name), { recursive: true });
  writeFileSync(join(folder, 'package-lock.json'), '{}');
  // An npm that fails as one without a network does, so that this test needs none.
  writeFileSync(join(folder, 'npm'), '#!/bin/sh\necho "no network" >&2\nexit 1\n', { mode: 0o755 });
  const run = spawnSync(process.execPath, ['bin/vaporwright.mjs', '--help'], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, PATH: `${folder}:${process.env.PATH ?? ''}` },
  });
  rmSync(folder, { recursive: true });
  expect(run.status).toBe(1);
  expect(run.stdout).toBe('');
  expect(run.stderr).toContain('installing packages');
  expect(run.stderr).toContain('run: npm ci');
});
