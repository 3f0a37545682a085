import { CsvError } from './csv-error.ts';
import { type CsvFormat, findFormat } from './csv-format.ts';
import { guessColumns } from './guess-columns.ts';
import { guessTime } from './guess-time.ts';
import type { ColumnMapping, Mapping, TimeMapping } from './mapping.ts';
import { RawColumn } from './raw-column.ts';

/** How one file is read: where its cells are and what they hold. */
export interface CsvLayout {
  readonly format: CsvFormat;
  readonly width: number;
  readonly time: TimeMapping;
  readonly timeIndices: readonly number[];
  /** Every column's mapping, those left out as well. */
  readonly mappings: readonly ColumnMapping[];
  readonly columns: readonly RawColumn[];
}

function indexOf(name: string, format: CsvFormat, fileName: string): number {
  const index = format.header.findIndex(
    (header) => header === name || header.toLowerCase() === name.trim().toLowerCase(),
  );
  if (index >= 0) return index;
  throw new CsvError({
    fileName,
    line: Math.max(1, format.headerLine),
    found: `the columns ${format.header.map((header) => `"${header}"`).join(', ')}`,
    expected: `a column "${name}", which the mapping names`,
    whatToDo: 'Correct the column in the mapping, or use the mapping that belongs to this file',
  });
}

/** Finds format, time column and columns in the first part of the text; a given mapping goes before guesses. */
export function findLayout(head: string, fileName: string, given: Mapping | undefined): CsvLayout {
  const format = findFormat(head, fileName, given);
  const time = given?.time ?? guessTime(format);
  if (!time)
    throw new CsvError({
      fileName,
      line: Math.max(1, format.headerLine),
      found: `the columns ${format.header.map((header) => `"${header}"`).join(', ')}`,
      expected: 'one that holds the time: numbers that rise, clock times or date-times, under a header such as time_s',
      whatToDo: 'Add a time column, or name it under "time" in a mapping file',
      mapping: { schema: 'vaporwright-mapping-1', columns: guessColumns(format, []) },
    });
  const timeIndices = time.columns.map((name) => indexOf(name, format, fileName));
  const mappings = given ? fill(given.columns, format, time) : guessColumns(format, time.columns);
  const columns: RawColumn[] = [];
  for (const mapping of mappings) {
    if (mapping.channel === null) continue;
    if (columns.some((column) => column.channel === mapping.channel))
      throw new CsvError({
        fileName,
        found: `the channel ${mapping.channel} twice in the mapping`,
        expected: 'one column for each channel',
        whatToDo: 'Set the channel of the others to null',
      });
    columns.push(new RawColumn(indexOf(mapping.column, format, fileName), mapping.channel, mapping, format.decimal));
  }
  if (columns.length === 0)
    throw new CsvError({
      fileName,
      line: Math.max(1, format.headerLine),
      found: `the columns ${format.header.map((header) => `"${header}"`).join(', ')}`,
      expected: 'at least one channel of a vapour system recording, as tank pressure',
      whatToDo: 'Name the columns in a mapping file',
      mapping: { schema: 'vaporwright-mapping-1', time, columns: [...mappings] },
    });
  return { format, width: format.header.length, time, timeIndices, mappings, columns };
}

/** Columns that a given mapping does not list are left out, and said to be. */
function fill(given: readonly ColumnMapping[], format: CsvFormat, time: TimeMapping): ColumnMapping[] {
  const listed = new Set([...given.map(({ column }) => column), ...time.columns]);
  const others = format.header.filter((header) => !listed.has(header));
  return [...given, ...others.map((column) => ({ column, channel: null, reasons: ['the mapping does not list it'] }))];
}
