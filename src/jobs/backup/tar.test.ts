import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readTar, TAR_END, tarHeader, tarPadding } from './tar.ts';

const WHEN = new Date('2026-03-01T08:30:00Z');

function archive(entries: readonly { readonly name: string; readonly content: Uint8Array }[]): Buffer {
  const parts = entries.flatMap(({ name, content }) => [
    tarHeader(name, content.byteLength, WHEN),
    content,
    tarPadding(content.byteLength),
  ]);
  return Buffer.concat([...parts, TAR_END]);
}

async function* inPieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.byteLength; at += size) yield bytes.subarray(at, at + size);
}

async function read(source: AsyncIterable<Uint8Array>) {
  const entries: { readonly name: string; readonly content: Uint8Array }[] = [];
  for await (const { name, content } of readTar(source)) {
    const parts: Uint8Array[] = [];
    for await (const part of content) parts.push(part);
    entries.push({ name, content: new Uint8Array(Buffer.concat(parts)) });
  }
  return entries;
}

test('what is written is read, however it is cut into pieces', async () => {
  const entry = fc.record({
    name: fc.stringMatching(/^[a-z0-9/._-]{1,99}$/),
    content: fc.uint8Array({ maxLength: 1500 }),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(entry, { maxLength: 4 }), fc.integer({ min: 1, max: 2000 }), async (entries, size) => {
      const found = await read(inPieces(archive(entries), size));
      expect(found).toEqual(entries.map(({ name, content }) => ({ name, content: new Uint8Array(content) })));
    }),
    { numRuns: 60 },
  );
});

test("the system's own program reads it", () => {
  const bytes = archive([
    { name: 'backup.json', content: Buffer.from('{}\n') },
    { name: 'tables/jobs/000001.jsonl', content: Buffer.from('x'.repeat(513)) },
  ]);
  expect(execFileSync('tar', ['-tvf', '-'], { input: bytes, encoding: 'utf8' })).toMatch(
    /^-rw-------.* 3 2026-03-01 .*backup\.json\n-rw-------.* 513 2026-03-01 .*tables\/jobs\/000001\.jsonl\n$/,
  );
  expect(execFileSync('tar', ['-xOf', '-', 'backup.json'], { input: bytes, encoding: 'utf8' })).toBe('{}\n');
});

test('a damaged or cut-off archive is refused', async () => {
  const bytes = archive([{ name: 'a', content: Buffer.from('b') }]);
  for (const cut of [0, 511, 512, 600, 1024]) {
    await expect(read(inPieces(bytes.subarray(0, cut), 100))).rejects.toThrow(/ends in the middle/);
  }
  const damaged = Buffer.from(bytes);
  damaged[0]! ^= 1;
  await expect(read(inPieces(damaged, 100))).rejects.toThrow(/damaged/);
});

test('names and sizes that do not fit are refused when it is written', () => {
  expect(() => tarHeader('x'.repeat(101), 1, WHEN)).toThrow(/too long/);
  expect(() => tarHeader('x', 9 * 1024 ** 3, WHEN)).toThrow(/8 GiB/);
});
