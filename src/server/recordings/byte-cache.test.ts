import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { ByteCache } from './byte-cache.ts';

const folder = mkdtempSync(join(tmpdir(), 'vaporwright-bytes-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const put = (name: string, bytes: number): string => {
  const path = join(folder, name);
  writeFileSync(path, Buffer.alloc(bytes, name));
  return path;
};

test('what fits is kept, what was asked for longest ago goes, what is large is never kept', async () => {
  const cache = new ByteCache(250);
  const [a, b, c, large] = [put('a', 100), put('b', 100), put('c', 100), put('l', 3 * 1024 * 1024)];
  await cache.read(a);
  await cache.read(b);
  await cache.read(a);
  await cache.read(c);
  // Files of these names never change; a change on the disk shows what was kept.
  for (const path of [a, b, c]) writeFileSync(path, Buffer.alloc(100, 'z'));
  const first = async (path: string) => Buffer.from((await cache.read(path)) ?? []).toString('latin1', 0, 1);
  expect([await first(a), await first(c)]).toEqual(['a', 'c']);
  expect(await first(b)).toBe('z');
  expect(await cache.read(large)).toBeUndefined();
  await expect(cache.read(join(folder, 'none'))).rejects.toThrow();
});
