import { mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { underLock } from './folder-lock.ts';
import { ownIdentity } from './process-identity.ts';

let folder: string;
let lock: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'vaporwright-lock-'));
  lock = join(folder, 'lock');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Beyond the largest number that Linux gives (4194304). */
const NOBODY = 4_999_999;

test('one at a time, however many want it, and nothing is left', async () => {
  let inside = 0;
  let most = 0;
  const work = async () => {
    most = Math.max(most, ++inside);
    await pause(2);
    inside--;
  };
  await Promise.all(Array.from({ length: 12 }, () => underLock(lock, work)));
  expect(most).toBe(1);
  expect(readdirSync(folder)).toEqual([]);
});

test('work that fails gives the lock back', async () => {
  await expect(underLock(lock, () => Promise.reject(new Error('failed inside')))).rejects.toThrow('failed inside');
  expect(await underLock(lock, async () => 'next')).toBe('next');
});

test.each([
  ['a process that has ended', JSON.stringify({ pid: NOBODY, host: hostname() })],
  ['a process whose number has been given away again', JSON.stringify({ ...ownIdentity(), started: '1' })],
])('the lock of %s is taken over, once', async (_who, text) => {
  writeFileSync(lock, text);
  let inside = 0;
  const results = await Promise.all(
    Array.from({ length: 6 }, () =>
      underLock(lock, async () => {
        expect(++inside).toBe(1);
        await pause(1);
        return inside--;
      }),
    ),
  );
  expect(results).toHaveLength(6);
  expect(readdirSync(folder)).toEqual([]);
});

test('an empty lock file is taken over when it is old', async () => {
  writeFileSync(lock, '');
  utimesSync(lock, 1_000_000, 1_000_000);
  expect(await underLock(lock, async () => 'done', 500)).toBe('done');
});

test.each([
  ['a living process', () => JSON.stringify(ownIdentity())],
  ['a process on another machine', () => JSON.stringify({ pid: NOBODY, host: 'elsewhere.invalid' })],
])('the lock of %s is respected, and the message says whose it is', async (_who, holder) => {
  writeFileSync(lock, holder());
  const { pid, host } = JSON.parse(holder());
  await expect(underLock(lock, async () => 'never', 60)).rejects.toMatchObject({
    name: 'StoreProblem',
    code: 'in-use',
    where: lock,
    message: expect.stringContaining(`process ${pid} on ${host}`),
  });
  expect(readFileSync(lock, 'utf8')).toBe(holder());
});
