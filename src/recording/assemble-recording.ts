import { convertColumn } from './convert-column.ts';
import { CsvError } from './csv-error.ts';
import type { CsvLayout } from './csv-layout.ts';
import { makeGauge, readVolts, remarks } from './finish-channels.ts';
import { makeReport } from './make-report.ts';
import type { ColumnMapping, Mapping } from './mapping.ts';
import { findQuality, type Quality } from './quality.ts';
import type { RawColumn } from './raw-column.ts';
import { type ReadReport, SKIP_REASONS, type SkipReason, Tally } from './read-report.ts';
import type { ChannelName, Recording, RecordingNotes } from './recording.ts';
import type { SensorOwner } from './sensor-volts.ts';
import { undoSummerTime } from './summer-time.ts';
import { type OrderedTimes, orderTimes } from './time-order.ts';
import { shiftNotes, ventAt } from './vent-by-hand.ts';

export interface AssembleOptions {
  readonly fileName: string;
  readonly mapping?: Mapping;
  readonly car?: SensorOwner;
  /** Times in the notes are on the file's own clock; they are moved to the recording's. */
  readonly notes?: RecordingNotes;
  /** Ambient pressure for absolute tank pressures when the file has no barometer, Pa. */
  readonly barometricAbsPa?: number;
}

export interface RawRows {
  readonly timeS: Float64Array;
  readonly lines: Float64Array;
  readonly skipped: Map<SkipReason, Tally>;
  readonly linesRead: number;
  readonly firstTimeText: string;
}

export interface CsvReading {
  readonly recording: Recording;
  /** The mapping that was used, with the confidence and reasons of what was guessed; may be saved and given again. */
  readonly mapping: Mapping;
  readonly report: ReadReport;
  readonly quality: Quality;
}

/** More lines of a wrong shape than this share, or unreadable cells in a column, and the file is not what it seems. */
const MOST_BAD_SHARE = 0.2;
const FEWEST_BAD = 3;

type Fail = (facts: {
  line?: number;
  column?: RawColumn;
  found: string;
  expected: string;
  whatToDo: string;
}) => CsvError;

function checkRows(rows: RawRows, fail: Fail): void {
  const shapes: SkipReason[] = ['too-few-cells', 'too-many-cells', 'unreadable-time', 'no-time'];
  let bad = 0;
  for (const reason of shapes) bad += rows.skipped.get(reason)?.count ?? 0;
  const worst = shapes
    .map((reason) => ({ reason, tally: rows.skipped.get(reason) }))
    .sort((a, b) => (b.tally?.count ?? 0) - (a.tally?.count ?? 0))[0]!;
  const line = worst.tally?.firstLines[0];
  if (bad > FEWEST_BAD && bad > MOST_BAD_SHARE * (bad + rows.timeS.length))
    throw fail({
      ...(line === undefined ? {} : { line }),
      found: `"${worst.tally?.example ?? ''}", which ${SKIP_REASONS[worst.reason]} (${bad} such lines of ${bad + rows.timeS.length})`,
      expected: 'lines shaped like the header',
      whatToDo:
        worst.reason === 'too-many-cells'
          ? 'If the file has decimal commas and commas between cells, export it again with semicolons'
          : 'Check the file, or give delimiter, header line and time column in a mapping file',
    });
  if (rows.timeS.length < 2)
    throw fail({
      line: line ?? Math.max(1, rows.linesRead),
      found: `${rows.timeS.length} readable sample${rows.timeS.length === 1 ? '' : 's'} in ${rows.linesRead} line${rows.linesRead === 1 ? '' : 's'}`,
      expected: 'at least 2 samples',
      whatToDo: 'Check that this is the whole recording',
    });
}

/** A clock time or date-time that states its offset from UTC is not moved by summer time. */
const WITH_OFFSET = /(?:z|[+-]\d{2}:?\d{2})$/i;

function isLocalClock({ time }: CsvLayout, firstTimeText: string): boolean {
  return time.format === 'clock' || (time.format === 'date-time' && !WITH_OFFSET.test(firstTimeText.trim()));
}

function undoClockChange(rows: RawRows, layout: CsvLayout, warnings: string[]): void {
  if (!isLocalClock(layout, rows.firstTimeText)) return;
  const change = undoSummerTime(rows.timeS);
  if (change !== undefined)
    warnings.push(
      `the clock was set ${change.direction} by an hour at line ${rows.lines[change.index]}, as for summer time: the times after it were moved back in line`,
    );
}

function dropByTime(rows: RawRows, layout: CsvLayout, fail: Fail): OrderedTimes {
  const ordered = orderTimes(rows.timeS, layout.time.format === 'clock');
  const at = ordered.restartAt;
  if (at !== undefined)
    throw fail({
      line: rows.lines[at]!,
      found: `a time that goes back from ${rows.timeS[at - 1]} s to ${rows.timeS[at]} s and stays back`,
      expected: 'one recording whose time rises',
      whatToDo: 'Part the file there into one file for each recording',
    });
  for (const { index, reason } of ordered.dropped) {
    let tally = rows.skipped.get(reason);
    if (!tally) {
      tally = new Tally();
      rows.skipped.set(reason, tally);
    }
    tally.add(rows.lines[index]!, `time ${rows.timeS[index]} s`);
  }
  return ordered;
}

function compact(values: Float64Array, keep: Uint8Array | undefined): Float64Array {
  return keep === undefined ? values : values.filter((_, i) => keep[i] === 1);
}

/** Puts the rows together: order of time, units, gauge pressures, checks. */
export function assembleRecording(options: AssembleOptions, layout: CsvLayout, rows: RawRows): CsvReading {
  const { fileName } = options;
  const { format } = layout;
  const warnings: string[] = [];
  const shownMapping = (columns: readonly ColumnMapping[]): Mapping => ({
    schema: 'vaporwright-mapping-1',
    delimiter: format.delimiter,
    decimal: format.decimal,
    headerLine: format.headerLine,
    time: layout.time,
    columns: [...columns],
    ...(options.mapping?.barometricAbsPa === undefined ? {} : { barometricAbsPa: options.mapping.barometricAbsPa }),
  });
  const fail: Fail = ({ column, ...facts }) =>
    new CsvError({
      fileName,
      ...facts,
      ...(column === undefined ? {} : { column: column.index + 1, cell: column.mapping.column }),
      mapping: shownMapping(layout.mappings),
    });

  checkRows(rows, fail);
  undoClockChange(rows, layout, warnings);
  const ordered = dropByTime(rows, layout, fail);
  const clock = compact(rows.timeS, ordered.keep);
  const firstTimeS = clock[0]!;
  const timeS = clock.map((t) => t - firstTimeS);
  if (ordered.midnights.length > 0)
    warnings.push(`the clock passes midnight at line ${rows.lines[ordered.midnights[0]!]}`);
  const duplicates = rows.skipped.get('duplicated-time')?.count ?? 0;
  if (duplicates > 0.3 * rows.timeS.length)
    warnings.push(
      `${duplicates} lines repeat a time: the clock is coarser than the samples; only the first of each is kept`,
    );

  const channels: Partial<Record<ChannelName, Float64Array>> = {};
  const used = new Map<string, ColumnMapping>();
  const spoilt = new Map<string, number>();
  for (const column of layout.columns) {
    const present = rows.timeS.length - column.missing;
    if (column.unreadable.count > FEWEST_BAD && column.unreadable.count > MOST_BAD_SHARE * present)
      throw fail({
        column,
        line: column.unreadable.firstLines[0]!,
        found: `"${column.unreadable.example}" (${column.unreadable.count} such cells of ${present})`,
        expected: `a number with "${format.decimal}" as decimal mark, an on/off word, or nothing`,
        whatToDo: 'Give decimal mark and columns in a mapping file, or set this column to null there',
      });
    const converted = convertColumn(column, compact(column.numbers.values(), ordered.keep));
    if (!converted.ok) throw fail({ column, line: Math.max(1, format.headerLine), ...converted });
    used.set(column.mapping.column, converted.mapping);
    spoilt.set(column.mapping.column, converted.unreadable);
    if (column.missing < rows.timeS.length) channels[column.channel] = converted.values;
    else warnings.push(`column "${column.mapping.column}" is empty`);
  }
  const mapping = shownMapping(layout.mappings.map((each) => used.get(each.column) ?? each));
  const absolute = makeGauge(channels, mapping, options.barometricAbsPa, warnings);
  if (absolute !== undefined)
    throw fail({
      column: layout.columns.find((raw) => raw.channel === absolute)!,
      line: Math.max(1, format.headerLine),
      found: 'an absolute pressure and no barometric pressure',
      expected: 'a barometric pressure to subtract, as the sensors read pressure against ambient',
      whatToDo: 'Record the barometric pressure too, or give it as "barometricAbsPa" in a mapping file',
    });
  readVolts(channels, options.car, warnings);
  warnings.push(...remarks(channels, mapping));

  const notes = options.notes === undefined ? undefined : shiftNotes(options.notes, firstTimeS);
  if (channels.ventClosed === undefined && notes?.ventShutS !== undefined && notes.ventShutS.length > 0)
    channels.ventClosed = ventAt(timeS, notes.ventShutS);
  const recording: Recording = { timeS, channels, label: fileName, ...(notes === undefined ? {} : { notes }) };
  const quality = findQuality(recording, options.car?.pressureSensor);
  return {
    recording,
    mapping,
    quality,
    report: makeReport({
      fileName,
      layout,
      mapping,
      skipped: rows.skipped,
      linesRead: rows.linesRead,
      samples: timeS.length,
      spoilt,
      warnings,
      pauses: quality.time.gaps,
      firstTimeS,
    }),
  };
}
