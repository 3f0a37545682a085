/** A recording from a file, plain or gzip, in pieces: what is in memory is the result, not the text. */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { createGunzip } from 'node:zlib';
import { asCsvReading } from '../../recording/bus/as-csv-reading.ts';
import { CaptureReader, type CaptureReading, looksLikeCapture } from '../../recording/bus/read-capture.ts';
import type { Mapping } from '../../recording/mapping.ts';
import { CsvError, type CsvReading, type CsvReadOptions, CsvRecordingReader } from '../../recording/read-csv.ts';

export interface ReadFile extends CsvReading {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
  /** Codes, readiness and counters, where the file is a bus capture. */
  readonly capture?: CaptureReading;
}

export interface ReadFileOptions extends Omit<CsvReadOptions, 'fileName' | 'decoder'> {
  /** What people call the file, where its path says nothing. */
  readonly fileName?: string;
  /** Stops at files that unfold to more text than this. */
  readonly maxUnpackedBytes?: number;
  /** Told the share of the file that has been read. */
  readonly onProgress?: (fraction: number) => void;
}

export interface UnreadableFacts {
  readonly file: string;
  readonly line?: number;
  readonly column?: number;
  readonly found: string;
  readonly expected: string;
  readonly advice: string;
}

/** The file is there and is no recording that can be read. */
export class UnreadableFile extends Error {
  readonly facts: UnreadableFacts;
  /** The mapping as far as it could be guessed. */
  readonly guessed: Mapping | undefined;
  constructor(message: string, facts: UnreadableFacts, guessed?: Mapping) {
    super(message);
    this.name = 'UnreadableFile';
    this.facts = facts;
    this.guessed = guessed;
  }
}

/** A bus capture that holds codes or status at most. */
export class CaptureWithoutRecording extends UnreadableFile {
  readonly capture: CaptureReading;
  constructor(file: string, capture: CaptureReading) {
    const { frames, diagnosticFrames } = capture.report;
    super(`${file} is a bus capture that holds no recording`, {
      file,
      found: `${diagnosticFrames} diagnostic frames of ${frames}, without samples of a channel over time`,
      expected: 'time stamps, and answers to service $01 with items such as $32, $2E, $0C',
      advice: 'Record with candump -L while a tester asks for these items, or record with: vaporwright capture.',
    });
    this.capture = capture;
  }
}

export const isGzip = (head: Uint8Array): boolean => head[0] === 0x1f && head[1] === 0x8b;

/** Bytes of the text, whatever the file is packed in; the hash is of the file as it lies on disk. */
export async function* unpacked(path: string, onBytes: (piece: Buffer) => void = () => {}): AsyncGenerator<Buffer> {
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
    try {
      yield* all();
    } finally {
      source.destroy();
    }
    return;
  }
  const gunzip = createGunzip();
  const { pipeline } = await import('node:stream/promises');
  // Awaited through the iteration below, which fails with the same error.
  pipeline(all(), gunzip).catch(() => {});
  try {
    yield* gunzip as AsyncIterable<Buffer>;
  } finally {
    source.destroy();
  }
}

function asUnreadable(file: string, error: unknown): unknown {
  if (error instanceof CsvError) {
    const { line, column, cell, found, expected, whatToDo, mapping } = error.facts;
    return new UnreadableFile(
      `${file} cannot be read as a recording`,
      {
        file,
        ...(line === undefined ? {} : { line }),
        ...(column === undefined ? {} : { column }),
        found: cell === undefined ? found : `${found} (column "${cell}")`,
        expected,
        advice: whatToDo,
      },
      mapping,
    );
  }
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code.startsWith('Z_') || code === 'ERR_STREAM_PREMATURE_CLOSE') {
    return new UnreadableFile(`${file} is a damaged or incomplete gzip file`, {
      file,
      found: error instanceof Error ? error.message : code,
      expected: 'a complete gzip file',
      advice: 'Copy the file again, or unpack it and read the plain CSV.',
    });
  }
  return error;
}

/** @throws UnreadableFile; what the system says when the file is not there or may not be read */
export async function readRecordingFile(path: string, given: ReadFileOptions): Promise<ReadFile> {
  const { onProgress, fileName = basename(path), maxUnpackedBytes = Number.POSITIVE_INFINITY, ...options } = given;
  const hash = createHash('sha256');
  let bytes = 0;
  let unpackedBytes = 0;
  let reader: CsvRecordingReader | CaptureReader | undefined;
  const shownName = given.fileName ?? path;
  try {
    const size = (await stat(path)).size;
    for await (const piece of unpacked(path, (read) => {
      hash.update(read);
      bytes += read.length;
      onProgress?.(size > 0 ? Math.min(1, bytes / size) : 1);
    })) {
      unpackedBytes += piece.length;
      if (unpackedBytes > maxUnpackedBytes) {
        throw new UnreadableFile(`${shownName} unfolds to more than can be read`, {
          file: shownName,
          found: `more than ${Math.round(maxUnpackedBytes / 2 ** 20)} MB of text in a packed file`,
          expected: 'a recording of one event',
          advice: 'Cut the recording to the event and send that.',
        });
      }
      reader ??= looksLikeCapture(piece)
        ? new CaptureReader({ ...options, fileName })
        : new CsvRecordingReader({ ...options, fileName, decoder: (encoding) => new TextDecoder(encoding) });
      reader.push(piece);
    }
    reader ??= new CsvRecordingReader({ ...options, fileName, decoder: (encoding) => new TextDecoder(encoding) });
    const file = { path, bytes, sha256: hash.digest('hex') };
    if (reader instanceof CsvRecordingReader) return { ...reader.finish(), ...file };
    const capture = reader.finish();
    const reading = asCsvReading(capture);
    if (reading === undefined) throw new CaptureWithoutRecording(shownName, capture);
    return { ...reading, capture, ...file };
  } catch (error) {
    throw asUnreadable(shownName, error);
  }
}
