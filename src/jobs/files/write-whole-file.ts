/** Writes a file so that it is there whole or not at all. */
import { randomUUID } from 'node:crypto';
import { open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileProblem } from '../file-problem.ts';
import { flushFolder } from './flush.ts';

/** Returns how many bytes were written. Readable for its owner only. */
export async function writeWholeFile(path: string, pieces: AsyncIterable<Uint8Array>): Promise<number> {
  const aside = `${path}.${randomUUID().slice(0, 8)}.part`;
  let bytes = 0;
  try {
    const handle = await open(aside, 'wx', 0o600);
    try {
      for await (const piece of pieces) {
        await handle.writeFile(piece);
        bytes += piece.byteLength;
      }
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(aside, path);
    await flushFolder(dirname(path));
    return bytes;
  } catch (error) {
    await rm(aside, { force: true }).catch(() => undefined);
    throw fileProblem(error, 'writing the file', path);
  }
}
