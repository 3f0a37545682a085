/** POSIX ustar, the open archive format: enough of it for plain files of known size. */

const BLOCK = 512;
const LARGEST = 8 * 1024 ** 3 - 1;

export interface TarEntry {
  readonly name: string;
  readonly bytes: number;
  /** Must be read to its end before the next entry is asked for. */
  readonly content: AsyncIterable<Uint8Array>;
}

const octal = (value: number, length: number): string => `${value.toString(8).padStart(length - 1, '0')}\0`;

function checksum(header: Uint8Array): number {
  let sum = 0;
  for (let at = 0; at < BLOCK; at++) sum += at >= 148 && at < 156 ? 32 : header[at]!;
  return sum;
}

export function tarHeader(name: string, bytes: number, modified: Date): Uint8Array {
  if (Buffer.byteLength(name) > 100) throw new Error(`"${name}" is too long a name for this archive.`);
  if (bytes > LARGEST) throw new Error(`"${name}" is larger than 8 GiB.`);
  const header = Buffer.alloc(BLOCK);
  header.write(name, 0);
  header.write(octal(0o600, 8), 100);
  header.write(octal(0, 8), 108);
  header.write(octal(0, 8), 116);
  header.write(octal(bytes, 12), 124);
  header.write(octal(Math.floor(modified.getTime() / 1000), 12), 136);
  header.write('0', 156);
  header.write('ustar\x0000', 257, 'latin1');
  header.write(`${checksum(header).toString(8).padStart(6, '0')}\0 `, 148);
  return header;
}

export const tarPadding = (bytes: number): Uint8Array => new Uint8Array((BLOCK - (bytes % BLOCK)) % BLOCK);
export const TAR_END: Uint8Array = new Uint8Array(2 * BLOCK);

/** Takes exact lengths from a stream of pieces. */
class Pieces {
  readonly #source: AsyncIterator<Uint8Array>;
  #rest: Uint8Array = new Uint8Array(0);

  constructor(source: AsyncIterable<Uint8Array>) {
    this.#source = source[Symbol.asyncIterator]();
  }

  /** Up to `most` bytes; empty at the end. */
  async some(most: number): Promise<Uint8Array> {
    while (this.#rest.byteLength === 0) {
      const next = await this.#source.next();
      if (next.done) return this.#rest;
      this.#rest = next.value;
    }
    const piece = this.#rest.subarray(0, most);
    this.#rest = this.#rest.subarray(piece.byteLength);
    return piece;
  }

  /** Throws when the stream ends before. */
  async exactly(bytes: number): Promise<Buffer> {
    const parts: Uint8Array[] = [];
    for (let left = bytes; left > 0; ) {
      const piece = await this.some(left);
      if (piece.byteLength === 0) throw new Error('it ends in the middle');
      parts.push(piece);
      left -= piece.byteLength;
    }
    return Buffer.concat(parts);
  }
}

async function* content(pieces: Pieces, bytes: number): AsyncGenerator<Uint8Array> {
  for (let left = bytes; left > 0; ) {
    const piece = await pieces.some(left);
    if (piece.byteLength === 0) throw new Error('it ends in the middle');
    left -= piece.byteLength;
    yield piece;
  }
  await pieces.exactly(tarPadding(bytes).byteLength);
}

/** @throws Error with what is wrong with the archive */
export async function* readTar(source: AsyncIterable<Uint8Array>): AsyncGenerator<TarEntry> {
  const pieces = new Pieces(source);
  for (;;) {
    const header = await pieces.exactly(BLOCK);
    if (header.every((byte) => byte === 0)) return;
    const stated = Number.parseInt(header.toString('latin1', 148, 154), 8);
    if (stated !== checksum(header)) throw new Error('a header in it is damaged, or it is no archive of this kind');
    const name = header.toString('utf8', 0, header.indexOf(0));
    const bytes = Number.parseInt(header.toString('latin1', 124, 135), 8);
    yield { name, bytes, content: content(pieces, bytes) };
  }
}
