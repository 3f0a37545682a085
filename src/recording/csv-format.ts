import Papa from 'papaparse';
import { CsvError } from './csv-error.ts';
import { DELIMITERS, type Delimiter, type Mapping } from './mapping.ts';
import { type DecimalMark, isMissing, parseDecimal } from './parse-number.ts';
import { parseClock, parseDateTime } from './parse-time.ts';
import { isWord } from './switch-words.ts';
import { lookUpUnit } from './unit-lookup.ts';

export type Newline = '\n' | '\r';

/** How the text of one file is cut into cells. */
export interface CsvFormat {
  readonly delimiter: Delimiter;
  readonly decimal: DecimalMark;
  readonly newline: Newline;
  /** Index of the header row among the parsed rows; -1: none. */
  readonly headerRow: number;
  readonly headerLine: number;
  readonly unitRow: readonly string[] | undefined;
  /** First row of numbers. */
  readonly dataRow: number;
  /** Names of the columns, made unique. */
  readonly header: readonly string[];
  readonly rawHeader: readonly string[];
  /** The rows of the head from `dataRow` on, for guessing. */
  readonly sample: readonly (readonly string[])[];
}

/** Rows looked at for guessing. */
export const SAMPLE_ROWS = 400;

export const newlineOf = (head: string): Newline => (!head.includes('\n') && head.includes('\r') ? '\r' : '\n');

/** Takes the carriage return off the last cell. */
export function stripReturn(row: string[]): string[] {
  const last = row.length - 1;
  if (last >= 0 && row[last]!.endsWith('\r')) row[last] = row[last]!.slice(0, -1);
  return row;
}

export function parseRows(text: string, delimiter: Delimiter, newline: Newline): string[][] {
  return new Papa.Parser({ delimiter, newline }).parse(text, 0, false).data.map(stripReturn);
}

const isValue = (cell: string, decimal: DecimalMark): boolean =>
  !Number.isNaN(parseDecimal(cell, decimal)) ||
  isWord(cell) ||
  !Number.isNaN(parseClock(cell)) ||
  !Number.isNaN(parseDateTime(cell, 'day-first')) ||
  !Number.isNaN(parseDateTime(cell, 'month-first')) ||
  !Number.isNaN(parseDateTime(cell, 'year-first')) ||
  /^\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}$/.test(cell.trim());

const filled = (row: readonly string[]): number => row.filter((cell) => cell.trim() !== '').length;

/** A row that could be a line of the recording: at least two cells, mostly values, at least one number. */
function isDataRow(row: readonly string[], decimal: DecimalMark): boolean {
  if (row.length < 2) return false;
  let values = 0;
  let numbers = 0;
  let other = 0;
  for (const cell of row) {
    if (isMissing(cell)) continue;
    if (isValue(cell, decimal)) values++;
    else other++;
    if (!Number.isNaN(parseDecimal(cell, decimal))) numbers++;
  }
  return numbers >= 1 && values >= 2 && values > other;
}

interface Trial {
  readonly delimiter: Delimiter;
  readonly decimal: DecimalMark;
  readonly rows: string[][];
  readonly width: number;
  readonly score: number;
}

function tryFormat(delimiter: Delimiter, decimal: DecimalMark, parsed: string[][]): Trial {
  const rows = parsed.slice(0, SAMPLE_ROWS);
  const widths = new Map<number, number>();
  let data = 0;
  let values = 0;
  let cells = 0;
  for (const row of rows) {
    if (!isDataRow(row, decimal)) continue;
    data++;
    widths.set(row.length, (widths.get(row.length) ?? 0) + 1);
    for (const cell of row) {
      if (isMissing(cell)) continue;
      cells++;
      if (isValue(cell, decimal)) values++;
    }
  }
  const [width, count] = [...widths].sort((a, b) => b[1] - a[1])[0] ?? [0, 0];
  const score = data === 0 ? 0 : (count / Math.max(1, rows.length)) * (values / cells) ** 4 * Math.min(1, width / 2);
  return { delimiter, decimal, rows: parsed, width, score };
}

/** Finds delimiter, decimal mark, header and unit row in the first part of a file. */
export function findFormat(head: string, fileName: string, given: Mapping | undefined): CsvFormat {
  const newline = newlineOf(head);
  const trials: Trial[] = [];
  for (const delimiter of given?.delimiter === undefined ? DELIMITERS : [given.delimiter]) {
    if (!head.includes(delimiter)) continue;
    const parsed = parseRows(head, delimiter, newline);
    for (const decimal of given?.decimal === undefined ? (['.', ','] as const) : [given.decimal])
      trials.push(tryFormat(delimiter, decimal, parsed));
  }
  // A stable sort: at equal scores the wider table, then the earlier choice (comma, point) stands.
  trials.sort((a, b) => b.score - a.score || b.width - a.width);
  const best = trials[0];
  if (!best || best.score === 0) throw noTable(head, fileName, newline);
  return placeHeader(best, newline, fileName, given);
}

function noTable(head: string, fileName: string, newline: Newline): CsvError {
  const line = head.split(newline).find((text) => text.trim() !== '') ?? '';
  return new CsvError({
    fileName,
    line: 1,
    found: line.trim() === '' ? 'no text' : `"${line.trim()}"`,
    expected: 'a table of numbers with a time column and at least one more, cells parted by comma, semicolon, tab or |',
    whatToDo: 'Check that this is the recording, exported as CSV with a header line',
  });
}

function placeHeader(best: Trial, newline: Newline, fileName: string, given: Mapping | undefined): CsvFormat {
  const { rows, decimal, width } = best;
  const lineOf = (row: number): number =>
    1 + rows.slice(0, row).reduce((sum, cells) => sum + 1 + cells.join('').split(newline).length - 1, 0);
  const firstNumbers = rows.findIndex((row) => row.length >= width - 1 && isDataRow(row, decimal));
  let headerRow = -1;
  if (given?.headerLine !== undefined) {
    headerRow = given.headerLine === 0 ? -1 : rows.findIndex((_, row) => lineOf(row) === given.headerLine);
  } else {
    for (let row = firstNumbers - 1; row >= 0 && headerRow < 0; row--) if (isHeader(rows[row]!, width)) headerRow = row;
    // Of two header-like rows the lower may be the units.
    const above = rows[headerRow - 1];
    if (headerRow > 0 && above && isHeader(above, width) && isUnitRow(rows[headerRow]!)) headerRow--;
    if (headerRow < 0)
      throw new CsvError({
        fileName,
        line: lineOf(Math.max(0, firstNumbers)),
        found: `"${(rows[firstNumbers] ?? []).join(best.delimiter)}" with no header above it`,
        expected: `a header line that names the ${width} columns`,
        whatToDo:
          'Add a header line, or give a mapping with "headerLine": 0, where the columns are called "column 1", "column 2" and so on',
      });
  }
  const names = headerRow >= 0 ? rows[headerRow]! : Array.from({ length: width }, (_, k) => `column ${k + 1}`);
  const below = rows[headerRow + 1];
  const unitRow = headerRow >= 0 && below && isUnitRow(below) ? below : undefined;
  const dataRow = headerRow < 0 ? firstNumbers : headerRow + (unitRow ? 2 : 1);
  return {
    delimiter: best.delimiter,
    decimal,
    newline,
    headerRow,
    headerLine: headerRow < 0 ? 0 : lineOf(headerRow),
    unitRow,
    dataRow,
    header: uniqueNames(names),
    rawHeader: headerRow >= 0 ? names : [],
    sample: rows.slice(dataRow, dataRow + SAMPLE_ROWS).filter((row) => !isRepeat(row, names) && filled(row) > 0),
  };
}

const isHeader = (row: readonly string[], width: number): boolean =>
  row.length >= width - 1 &&
  filled(row) >= Math.max(2, width / 2) &&
  row.every((cell) => Number.isNaN(parseDecimal(cell, '.')));

/** A header or unit row that stands again among the numbers. */
export const isRepeat = (row: readonly string[], names: readonly string[]): boolean =>
  row.every((cell, k) => cell.trim() === (names[k] ?? '').trim()) || isUnitRow(row);

const bare = (cell: string): string => cell.trim().replace(/^[[({]|[\])}]$/g, '');

export function isUnitRow(row: readonly string[]): boolean {
  const cells = row.map(bare).filter((cell) => cell !== '' && cell !== '-');
  // The unit of a fraction is written "1": a row with numbers is a sample all the same.
  if (cells.some((cell) => !Number.isNaN(parseDecimal(cell, '.')))) return false;
  const known = cells.filter(
    (cell) => lookUpUnit(cell) !== undefined || /^(s|sec|ms|on\/off|0\/1|h|min|hh:mm:ss.*)$/i.test(cell),
  );
  return cells.length > 0 && known.length >= 0.6 * cells.length;
}

/** Trims headers, takes off a byte-order mark, and numbers repeated ones. */
function uniqueNames(names: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return names.map((raw, k) => {
    const name = raw.replace(/^\ufeff/, '').trim() || `column ${k + 1}`;
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? name : `${name} (${count})`;
  });
}
