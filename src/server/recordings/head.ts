/** The first lines of a file as a table and what would be guessed of them, however little can be read. */
import { looksLikeCapture } from '../../recording/bus/read-capture.ts';
import { findFormat, parseRows } from '../../recording/csv-format.ts';
import type { Mapping } from '../../recording/mapping.ts';
import { CsvError, readRecordingCsv } from '../../recording/read-csv.ts';
import type { SensorOwner } from '../../recording/sensor-volts.ts';
import { detectEncoding } from '../../recording/text-encoding.ts';
import { unpacked } from './read-file.ts';

const HEAD_BYTES = 65_536;
const SHOWN_ROWS = 12;
/** Cells longer than this are cut for show. */
const LONGEST_CELL = 80;

export interface FileHead {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly guessed: Mapping | null;
}

async function headText(path: string): Promise<string> {
  const pieces: Buffer[] = [];
  let bytes = 0;
  try {
    for await (const piece of unpacked(path)) {
      pieces.push(piece);
      bytes += piece.length;
      if (bytes >= HEAD_BYTES) break;
    }
  } catch {
    // A damaged end of a packed file: what came before it can still be shown.
  }
  const all = Buffer.concat(pieces).subarray(0, HEAD_BYTES);
  const text = new TextDecoder(detectEncoding(all)).decode(all, { stream: true }).replace(/^\ufeff/, '');
  const lastBreak = Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r'));
  return bytes >= HEAD_BYTES && lastBreak > 0 ? text.slice(0, lastBreak + 1) : text;
}

function guess(text: string, fileName: string, car: SensorOwner | undefined): Mapping | null {
  try {
    return readRecordingCsv(text, { fileName, ...(car === undefined ? {} : { car }) }).mapping;
  } catch (error) {
    if (error instanceof CsvError) return error.facts.mapping ?? null;
    throw error;
  }
}

const cut = (cells: readonly string[]): string[] =>
  cells.map((cell) => (cell.length > LONGEST_CELL ? `${cell.slice(0, LONGEST_CELL - 1)}…` : cell));

export async function readHead(
  path: string,
  fileName: string,
  given: Mapping | undefined,
  car: SensorOwner | undefined,
): Promise<FileHead> {
  const text = await headText(path);
  // The frames of a bus capture have no columns to be mapped.
  if (looksLikeCapture(new TextEncoder().encode(text)))
    return { header: [], rows: text.split('\n', SHOWN_ROWS).map((line) => cut([line])), guessed: null };
  const guessed = guess(text, fileName, car);
  try {
    const { header, sample } = findFormat(text, fileName, given);
    return { header: cut(header), rows: sample.slice(0, SHOWN_ROWS).map(cut), guessed };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    // No table in it: the lines as they are.
    const rows = parseRows(text, ',', text.includes('\n') ? '\n' : '\r').slice(0, SHOWN_ROWS);
    return { header: [], rows: rows.map(cut), guessed };
  }
}
