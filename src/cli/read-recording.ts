/** A recording from a file, plain or gzip, in pieces: what is in memory is the result, not the text. */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { createGunzip } from 'node:zlib';
import { CsvError, type CsvReading, type CsvReadOptions, CsvRecordingReader } from '../recording/read-csv.ts';
import { EXIT } from './exit-codes.ts';
import { cannotRead, Failure } from './failure.ts';

export interface ReadFile extends CsvReading {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
}

export interface ReadFileOptions extends Omit<CsvReadOptions, 'fileName' | 'decoder'> {
  /** Told the share of the file that has been read. */
  readonly onProgress?: (fraction: number) => void;
}

const isGzip = (head: Buffer): boolean => head[0] === 0x1f && head[1] === 0x8b;

/** Bytes of the text, whatever the file is packed in; the hash is of the file as it lies on disk. */
async function* unpacked(path: string, onBytes: (piece: Buffer) => void): AsyncGenerator<Buffer> {
  const source = createReadStream(path, { highWaterMark: 1 << 18 });
  const pieces = source[Symbol.asyncIterator]() as AsyncIterator<Buffer>;
  const first = await pieces.next();
  if (first.done === true) return;
  const all = async function* (): AsyncGenerator<Buffer> {
    onBytes(first.value);
    yield first.value;
    for (let next = await pieces.next(); next.done !== true; next = await pieces.next()) {
      onBytes(next.value);
      yield next.value;
    }
  };
  if (!isGzip(first.value)) {
    yield* all();
    return;
  }
  const gunzip = createGunzip();
  const { pipeline } = await import('node:stream/promises');
  // Awaited through the iteration below, which fails with the same error.
  pipeline(all(), gunzip).catch(() => {});
  yield* gunzip as AsyncIterable<Buffer>;
}

function asReadFailure(path: string, error: unknown): Failure {
  if (error instanceof Failure) return error;
  if (error instanceof CsvError) {
    const { line, column, cell, found, expected, whatToDo } = error.facts;
    return new Failure(EXIT.input, `${path} cannot be read as a recording`, {
      file: path,
      ...(line === undefined ? {} : { line }),
      ...(column === undefined ? {} : { column }),
      found: cell === undefined ? found : `${found} (column "${cell}")`,
      expected,
      advice: whatToDo,
    });
  }
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code.startsWith('Z_') || code === 'ERR_STREAM_PREMATURE_CLOSE') {
    return new Failure(EXIT.input, `${path} is a damaged or incomplete gzip file`, {
      file: path,
      found: error instanceof Error ? error.message : code,
      expected: 'a complete gzip file',
      advice: 'Copy the file again, or unpack it and read the plain CSV.',
    });
  }
  return code === '' ? (error as Failure) : cannotRead(path, error);
}

export async function readRecordingFile(path: string, given: ReadFileOptions): Promise<ReadFile> {
  const { onProgress, ...options } = given;
  const hash = createHash('sha256');
  let bytes = 0;
  const reader = new CsvRecordingReader({
    ...options,
    fileName: basename(path),
    decoder: (encoding) => new TextDecoder(encoding),
  });
  try {
    const size = (await stat(path)).size;
    for await (const piece of unpacked(path, (read) => {
      hash.update(read);
      bytes += read.length;
      onProgress?.(size > 0 ? Math.min(1, bytes / size) : 1);
    })) {
      reader.push(piece);
    }
    return { ...reader.finish(), path, bytes, sha256: hash.digest('hex') };
  } catch (error) {
    throw asReadFailure(path, error);
  }
}
