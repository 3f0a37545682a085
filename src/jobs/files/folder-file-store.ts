/** Raw files by hash in a folder beside the database. */
import { createHash, randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { fileProblem, systemCode } from '../file-problem.ts';
import type { FileStore, KeptFile } from '../job-store.ts';
import { StoreProblem } from '../store-problem.ts';
import { flushFolder } from './flush.ts';

const IN_MAKING = /^in-making-/;
const ABANDONED_AFTER_MS = 24 * 3600 * 1000;
const SHA256 = /^[0-9a-f]{64}$/;

export class FolderFileStore implements FileStore {
  readonly #folder: string;

  private constructor(folder: string) {
    this.#folder = folder;
  }

  static async open(folder: string): Promise<FolderFileStore> {
    try {
      await mkdir(folder, { recursive: true, mode: 0o700 });
      await clearAbandoned(folder);
    } catch (error) {
      throw fileProblem(error, 'opening the folder of raw files', folder);
    }
    return new FolderFileStore(folder);
  }

  path(sha256: string): string {
    if (!SHA256.test(sha256)) throw new Error(`"${sha256}" is no SHA-256 in hexadecimal.`);
    // Two levels: a folder stays quick with many thousand files.
    return join(this.#folder, sha256.slice(0, 2), sha256);
  }

  async size(sha256: string): Promise<number> {
    try {
      return (await stat(this.path(sha256))).size;
    } catch (error) {
      throw systemCode(error) === 'ENOENT'
        ? missing(this.path(sha256))
        : fileProblem(error, 'looking for a raw file', this.path(sha256));
    }
  }

  async has(sha256: string): Promise<boolean> {
    try {
      return (await stat(this.path(sha256))).isFile();
    } catch (error) {
      if (systemCode(error) === 'ENOENT') return false;
      throw fileProblem(error, 'looking for a raw file', this.path(sha256));
    }
  }

  async keep(pieces: AsyncIterable<Uint8Array>): Promise<KeptFile> {
    const aside = join(this.#folder, `in-making-${randomUUID()}`);
    const hash = createHash('sha256');
    let bytes = 0;
    // What the caller's stream throws is the caller's; only our own calls are put in words here.
    const ours = <T>(work: Promise<T>): Promise<T> =>
      work.catch((error: unknown) => Promise.reject(fileProblem(error, 'keeping a raw file', this.#folder)));
    try {
      const handle = await ours(open(aside, 'wx', 0o600));
      try {
        for await (const piece of pieces) {
          hash.update(piece);
          for (let at = 0; at < piece.byteLength; ) {
            at += (await ours(handle.write(piece, at, piece.byteLength - at))).bytesWritten;
          }
          bytes += piece.byteLength;
        }
        await ours(handle.sync());
      } finally {
        await handle.close();
      }
      const sha256 = hash.digest('hex');
      await ours(this.#place(aside, sha256));
      return { sha256, bytes };
    } finally {
      await rm(aside, { force: true });
    }
  }

  /** Takes the place of the same content where it is there already: should that have been damaged, it is whole again. */
  async #place(aside: string, sha256: string): Promise<void> {
    const path = this.path(sha256);
    const folder = join(path, '..');
    if ((await mkdir(folder, { recursive: true, mode: 0o700 })) !== undefined) await flushFolder(this.#folder);
    await rename(aside, path);
    await flushFolder(folder);
  }

  /** Reads a file and checks it on the way: a wrong byte ends in an error, not in a wrong finding. */
  async *open(sha256: string): AsyncIterable<Uint8Array> {
    const path = this.path(sha256);
    const hash = createHash('sha256');
    try {
      for await (const piece of createReadStream(path) as AsyncIterable<Uint8Array>) {
        hash.update(piece);
        yield piece;
      }
    } catch (error) {
      throw systemCode(error) === 'ENOENT' ? missing(path) : fileProblem(error, 'reading a raw file', path);
    }
    if (hash.digest('hex') === sha256) return;
    throw new StoreProblem('corrupt', `A raw file has changed since it was kept: ${path}`, {
      where: path,
      advice: 'Put it back from a backup; its name is its SHA-256.',
    });
  }
}

function missing(path: string): StoreProblem {
  return new StoreProblem('missing-file', `A raw file of a job is missing: ${path}`, {
    where: path,
    advice: 'Put it back from a backup; its name is its SHA-256.',
  });
}

/** What killed programs have left. Others may be at work here, so that what was listed may have gone. */
async function clearAbandoned(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    if (!IN_MAKING.test(name)) continue;
    const path = join(folder, name);
    const made = await stat(path).catch(() => undefined);
    // A younger one may belong to a living program.
    if (made !== undefined && Date.now() - made.mtimeMs > ABANDONED_AFTER_MS) await rm(path, { force: true });
  }
}
