/** A multipart body with one file: streamed to the file store, never held in memory. */
import type { FastifyRequest } from 'fastify';
import type { FileStore, KeptFile } from '../../jobs/job-store.ts';
import { describeNonText } from '../../recording/text-encoding.ts';
import { Refusal } from '../refusal.ts';
import { isGzip } from './read-file.ts';

const FIELD_BYTES = 1_000_000;
/** What a multipart body adds to the file itself. */
const AROUND_BYTES = FIELD_BYTES + 65_536;
const LOOKED_AT = 2048;

export interface Upload {
  readonly kept: KeptFile;
  readonly fileName: string;
  readonly mediaType: string;
  /** The file's first bytes. */
  readonly firstBytes: Uint8Array;
  readonly fields: Readonly<Record<string, string>>;
}

export interface UploadRules {
  readonly maxBytes: number;
  /** Throws when the first bytes show that the file is of no kind wanted here. */
  readonly checkKind: (firstBytes: Uint8Array, fileName: string) => void;
}

const megabytes = (bytes: number): string => `${Math.round(bytes / 2 ** 20)} MB`;

const tooLarge = (fileName: string, maxBytes: number): Refusal =>
  new Refusal('too-large', `${fileName} is larger than what is taken in here.`, {
    file: fileName,
    expected: `at most ${megabytes(maxBytes)}`,
    advice: 'Cut it to the event in question, or pack it with gzip.',
  });

/** Neither a path nor anything that does not show. */
function safeName(given: string): string {
  const last = given.split(/[\\/]/).at(-1) ?? '';
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be in a name
  const plain = last.replace(/[\u0000-\u001f\u007f\u202a-\u202e\u2066-\u2069]/g, '').trim();
  return plain === '' ? 'file' : plain.slice(-255);
}

async function* watched(
  pieces: AsyncIterable<Buffer>,
  fileName: string,
  { maxBytes, checkKind }: UploadRules,
  onFirst: (firstBytes: Uint8Array) => void,
): AsyncGenerator<Uint8Array> {
  let bytes = 0;
  let first: Buffer | undefined = Buffer.alloc(0);
  const look = (head: Buffer) => {
    checkKind(head, fileName);
    onFirst(head);
    first = undefined;
  };
  for await (const piece of pieces) {
    bytes += piece.length;
    if (bytes > maxBytes) throw tooLarge(fileName, maxBytes);
    if (first !== undefined) {
      first = Buffer.concat([first, piece.subarray(0, LOOKED_AT - first.length)]);
      if (first.length >= LOOKED_AT) look(first);
    }
    yield piece;
  }
  if (first !== undefined) look(first);
}

export async function takeUpload(request: FastifyRequest, files: FileStore, rules: UploadRules): Promise<Upload> {
  if (!request.isMultipart()) {
    throw new Refusal('not-a-recording', 'A file is expected here, sent as a form.', {
      found: request.headers['content-type'] ?? 'no content type',
      expected: 'multipart/form-data with a field "file"',
    });
  }
  const announced = Number(request.headers['content-length'] ?? 0);
  if (announced > rules.maxBytes + AROUND_BYTES) throw tooLarge('The file', rules.maxBytes);
  const fields: Record<string, string> = {};
  let taken: Omit<Upload, 'fields'> | undefined;
  const limits = { fileSize: rules.maxBytes + 1, files: 1, fields: 8, fieldSize: FIELD_BYTES };
  for await (const part of request.parts({ limits })) {
    if (part.type === 'field') {
      fields[part.fieldname] = String(part.value);
      continue;
    }
    const fileName = safeName(part.filename);
    let firstBytes: Uint8Array = new Uint8Array(0);
    try {
      const kept = await files.keep(
        watched(part.file as AsyncIterable<Buffer>, fileName, rules, (head) => {
          firstBytes = head;
        }),
      );
      taken = { kept, fileName, mediaType: part.mimetype, firstBytes };
    } catch (error) {
      // The rest is read and thrown away: a sender who is still sending would not hear the answer.
      part.file.resume();
      throw error;
    }
  }
  if (taken === undefined) {
    throw new Refusal('bad-request', 'There is no file in this request.', {
      expected: 'a field "file" with the file',
      advice: 'Choose a file and send it again.',
    });
  }
  return { ...taken, fields };
}

/** First bytes of what a phone or a screen makes. */
const PICTURES = [
  ['PNG', '\u0089PNG'],
  ['JPEG', '\u00ff\u00d8\u00ff'],
  ['GIF', 'GIF8'],
] as const;

/** CSV, plain or packed with gzip; everything else is told by name where it has one. */
export function checkIsRecording(firstBytes: Uint8Array, fileName: string): void {
  if (isGzip(firstBytes)) return;
  // An empty file is text too; reading it says what is wrong with it. Sixteen-bit text has zero bytes.
  const isWide =
    (firstBytes[0] === 0xff && firstBytes[1] === 0xfe) ||
    (firstBytes[0] === 0xfe && firstBytes[1] === 0xff) ||
    firstBytes.subarray(0, 200).filter((byte, i) => i % 2 === 1 && byte === 0).length > 60;
  if (isWide) return;
  const head = Buffer.from(firstBytes).toString('latin1');
  const picture = PICTURES.find(([, start]) => head.startsWith(start))?.[0];
  const found = picture === undefined ? describeNonText(head) : `a ${picture} picture`;
  if (found === undefined) return;
  throw new Refusal('not-a-recording', `${fileName} is no recording that can be read here.`, {
    file: fileName,
    found,
    expected: 'a recording as CSV text, plain or packed with gzip',
    advice: 'Export the recording as CSV from the program that made it, and send that.',
  });
}
