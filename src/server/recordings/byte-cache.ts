/** Small files that are asked for again and again, kept in memory up to a limit; what was asked for longest ago goes first. */
import { open, readFile } from 'node:fs/promises';

/** Together, and for one file (judgement): a hundred ordinary recordings, no long one. */
const MOST_BYTES = 64 * 1024 * 1024;
const MOST_BYTES_EACH = 2 * 1024 * 1024;

export class ByteCache {
  readonly #kept = new Map<string, Uint8Array>();
  readonly #mostBytes: number;
  #bytes = 0;

  constructor(mostBytes: number = MOST_BYTES) {
    this.#mostBytes = mostBytes;
  }

  /** undefined: too large to be kept. Throws what the system says when it is not there. */
  async read(path: string): Promise<Uint8Array | undefined> {
    const kept = this.#kept.get(path);
    if (kept !== undefined) {
      this.#kept.delete(path);
      this.#kept.set(path, kept);
      return kept;
    }
    const handle = await open(path, 'r');
    try {
      if ((await handle.stat()).size > MOST_BYTES_EACH) return undefined;
    } finally {
      await handle.close();
    }
    const bytes = await readFile(path);
    this.#keep(path, bytes);
    return bytes;
  }

  #keep(path: string, bytes: Uint8Array): void {
    const before = this.#kept.get(path);
    this.#bytes += bytes.byteLength - (before?.byteLength ?? 0);
    this.#kept.delete(path);
    this.#kept.set(path, bytes);
    for (const [oldest, { byteLength }] of this.#kept) {
      if (this.#bytes <= this.#mostBytes) break;
      this.#kept.delete(oldest);
      this.#bytes -= byteLength;
    }
  }
}
