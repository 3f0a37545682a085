import { mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { FolderFileStore } from './folder-file-store.ts';

/** What the next file that is opened for writing does instead of writing; undefined: it writes. */
const failure = vi.hoisted(() => ({ write: undefined as string | undefined, sync: undefined as string | undefined }));

vi.mock('node:fs/promises', async (importOriginal) => {
  const original = await importOriginal<typeof import('node:fs/promises')>();
  const fail = (code: string) => Promise.reject(Object.assign(new Error(`${code}: from the test`), { code }));
  return {
    ...original,
    open: async (...args: Parameters<typeof original.open>) => {
      const handle = await original.open(...args);
      if (args[1] !== 'wx') return handle;
      const { write, sync } = failure;
      if (write !== undefined) handle.write = () => fail(write);
      if (sync !== undefined) handle.sync = () => fail(sync);
      return handle;
    },
  };
});

async function* pieces(...texts: string[]): AsyncGenerator<Uint8Array> {
  for (const text of texts) yield Buffer.from(text);
}

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'vaporwright-files-'));
  failure.write = undefined;
  failure.sync = undefined;
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('a full disk', () => {
  test.each([
    ['write', 'ENOSPC', 'disk-full'],
    ['sync', 'ENOSPC', 'disk-full'],
    ['write', 'EDQUOT', 'disk-full'],
    ['write', 'EROFS', 'read-only'],
    ['write', 'EACCES', 'no-permission'],
  ] as const)('at %s (%s) is said so, and nothing is left', async (step, code, expected) => {
    const files = await FolderFileStore.open(folder);
    failure[step] = code;
    await expect(files.keep(pieces('a', 'b'))).rejects.toMatchObject({
      name: 'StoreProblem',
      code: expected,
      message: expect.stringContaining(folder),
      advice: expect.stringMatching(/./),
    });
    expect(readdirSync(folder)).toEqual([]);
    failure[step] = undefined;
    const kept = await files.keep(pieces('a', 'b'));
    expect(await files.has(kept.sha256)).toBe(true);
  });
});

test('opening clears away what was left a day ago, not what is being written now', async () => {
  const [old, young] = [join(folder, 'in-making-old'), join(folder, 'in-making-young')];
  for (const path of [old, young]) writeFileSync(path, 'half');
  const twoDaysAgo = Date.now() / 1000 - 2 * 24 * 3600;
  utimesSync(old, twoDaysAgo, twoDaysAgo);
  await FolderFileStore.open(folder);
  expect(readdirSync(folder)).toEqual(['in-making-young']);
});

test('a file of the right size but other content is not taken for the one that is kept', async () => {
  const files = await FolderFileStore.open(folder);
  const kept = await files.keep(pieces('right'));
  writeFileSync(files.path(kept.sha256), 'rights'.slice(1));
  await files.keep(pieces('right'));
  let text = '';
  for await (const piece of files.open(kept.sha256)) text += Buffer.from(piece).toString();
  expect(text).toBe('right');
});

test('a folder that is a file is said to be one', async () => {
  const path = join(folder, 'file');
  writeFileSync(path, '');
  await expect(FolderFileStore.open(path)).rejects.toMatchObject({ code: 'corrupt', where: path });
});
