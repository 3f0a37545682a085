import type { CsvReading } from './assemble-recording.ts';
import { type CsvReadOptions, CsvRecordingReader } from './csv-reader.ts';

/**
 * Reads a recording from the whole text of a CSV file. Throws a CsvError that names file, line, column,
 * what was found and what was expected; never gives half a recording.
 */
export function readRecordingCsv(text: string, options: CsvReadOptions): CsvReading {
  const reader = new CsvRecordingReader(options);
  reader.push(text);
  return reader.finish();
}

export type { CsvReading } from './assemble-recording.ts';
export { CsvError } from './csv-error.ts';
export { type CsvReadOptions, CsvRecordingReader } from './csv-reader.ts';
export type { ReadReport } from './read-report.ts';
