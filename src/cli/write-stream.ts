/** A long file that appears whole or not at all, written piece by piece. */
import { randomUUID } from 'node:crypto';
import { open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { cannotWrite, Failure } from './failure.ts';
import { makeFolderFor } from './make-folder.ts';
import { isFinished, isUnfinished } from './stop-signals.ts';

/** Returns how many bytes were written. What the pieces themselves throw is passed on as it is. */
export async function writeStream(path: string, pieces: AsyncIterable<Uint8Array | string>): Promise<number> {
  const ours = <T>(work: Promise<T>): Promise<T> =>
    work.catch((error: unknown) => Promise.reject(error instanceof Failure ? error : cannotWrite(path, error)));
  const aside = join(dirname(path), `.${basename(path)}.${randomUUID().slice(0, 8)}.part`);
  makeFolderFor(path);
  let bytes = 0;
  try {
    // A backup holds everything of the shop: for this user alone.
    isUnfinished(aside);
    const file = await ours(open(aside, 'wx', 0o600));
    try {
      for await (const piece of pieces) {
        const part = typeof piece === 'string' ? Buffer.from(piece) : piece;
        await ours(file.writeFile(part));
        bytes += part.byteLength;
      }
      await ours(file.sync());
    } finally {
      await file.close();
    }
    await ours(rename(aside, path));
    return bytes;
  } finally {
    await rm(aside, { force: true });
    isFinished(aside);
  }
}
