import { convertColumn } from './convert-column.ts';
import { CsvError } from './csv-error.ts';
import type { CsvLayout } from './csv-layout.ts';
import { subtractAmbient } from './gauge-pressure.ts';
import type { ColumnMapping, Mapping } from './mapping.ts';
import { PLAUSIBLE_RANGE } from './plausible.ts';
import { findQuality, type Quality } from './quality.ts';
import type { RawColumn } from './raw-column.ts';
import { EXPECTED_SKIPS, type ReadReport, SKIP_REASONS, type SkipReason, Tally } from './read-report.ts';
import type { ChannelName, Recording, RecordingNotes } from './recording.ts';
import { pressureFromVolts, type SensorOwner } from './sensor-volts.ts';
import { type OrderedTimes, orderTimes } from './time-order.ts';
import { rangeOf } from './value-range.ts';

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
      found: `${rows.timeS.length} readable samples in ${rows.linesRead} lines`,
      expected: 'at least 2 samples',
      whatToDo: 'Check that this is the whole recording',
    });
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
  return keep === undefined ? values.slice() : values.filter((_, i) => keep[i] === 1);
}

function shiftNotes(notes: RecordingNotes, firstS: number): RecordingNotes {
  return notes.shutOffTimesS ? { ...notes, shutOffTimesS: notes.shutOffTimesS.map((t) => t - firstS) } : notes;
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
  makeGauge(channels, mapping, options, warnings, fail, layout);
  readVolts(channels, options, warnings);
  remark(channels, mapping, warnings);

  const notes = options.notes === undefined ? undefined : shiftNotes(options.notes, firstTimeS);
  const recording: Recording = { timeS, channels, label: fileName, ...(notes === undefined ? {} : { notes }) };
  const quality = findQuality(recording, options.car?.pressureSensor);
  return {
    recording,
    mapping,
    quality,
    report: makeReport(options, layout, rows, mapping, spoilt, warnings, quality, timeS, firstTimeS),
  };
}

function makeGauge(
  channels: Partial<Record<ChannelName, Float64Array>>,
  mapping: Mapping,
  options: AssembleOptions,
  warnings: string[],
  fail: Fail,
  layout: CsvLayout,
): void {
  for (const each of mapping.columns) {
    const pressure = each.channel === null ? undefined : channels[each.channel];
    if (each.reference !== 'absolute' || !pressure) continue;
    if (each.channel === 'barometricPa' || each.channel === 'manifoldAbsPa') continue;
    const ambient = options.barometricAbsPa ?? mapping.barometricAbsPa ?? channels.barometricPa;
    if (ambient === undefined) {
      const column = layout.columns.find((raw) => raw.channel === each.channel);
      throw fail({
        ...(column === undefined ? {} : { column }),
        line: Math.max(1, layout.format.headerLine),
        found: 'an absolute pressure and no barometric pressure',
        expected: 'a barometric pressure to subtract, as the sensors read pressure against ambient',
        whatToDo: 'Record the barometric pressure too, or give it as "barometricAbsPa" in a mapping file',
      });
    }
    warnings.push(subtractAmbient(pressure, ambient, each.column));
  }
}

function readVolts(
  channels: Partial<Record<ChannelName, Float64Array>>,
  options: AssembleOptions,
  warnings: string[],
): void {
  const volts = channels.tankPressureSensorV;
  if (!volts || channels.tankPressureGaugePa) return;
  const pressure = pressureFromVolts(volts, options.car?.pressureSensor);
  if (pressure) {
    channels.tankPressureGaugePa = pressure;
    warnings.push('the tank pressure was worked out from the sensor volts and the sensor range of the car');
  } else
    warnings.push(
      'the recording has sensor volts and no tank pressure: give a car file whose pressureSensor has minGaugePa, maxGaugePa, minV and maxV',
    );
}

function remark(channels: Partial<Record<ChannelName, Float64Array>>, mapping: Mapping, warnings: string[]): void {
  for (const each of mapping.columns) {
    const values = each.channel === null ? undefined : channels[each.channel];
    if (each.channel === null || !values) continue;
    const limits = PLAUSIBLE_RANGE[each.channel];
    const range = rangeOf(values);
    if (limits && range && (range.min < limits[0] || range.max > limits[1]))
      warnings.push(
        `column "${each.column}" read as ${each.channel} in ${each.unit ?? 'on/off'} goes from ${range.min.toPrecision(4)} to ${range.max.toPrecision(4)} in SI units, outside ${limits[0]} to ${limits[1]}: check its unit`,
      );
    if (each.confidence !== undefined && each.confidence < 0.75)
      warnings.push(
        `column "${each.column}" was guessed to be ${each.channel}${each.unit === undefined ? '' : ` in ${each.unit}`}: ${each.reasons?.join('; ')}`,
      );
  }
  if (mapping.time?.confidence !== undefined && mapping.time.confidence < 0.75)
    warnings.push(`the time was guessed: ${mapping.time.reasons?.join('; ')}`);
  if (!channels.tankPressureGaugePa && !channels.tankPressureSensorV) warnings.push('there is no tank pressure');
}

function makeReport(
  options: AssembleOptions,
  layout: CsvLayout,
  rows: RawRows,
  mapping: Mapping,
  spoilt: ReadonlyMap<string, number>,
  warnings: string[],
  quality: Quality,
  timeS: Float64Array,
  firstTimeS: number,
): ReadReport {
  const order = Object.keys(SKIP_REASONS) as SkipReason[];
  const skipped = order.flatMap((reason) => {
    const tally = rows.skipped.get(reason);
    if (!tally) return [];
    const { count, firstLines, example } = tally;
    if (!EXPECTED_SKIPS.includes(reason))
      warnings.push(
        `${count} line${count === 1 ? '' : 's'} left out (first: line ${firstLines[0]}): each ${SKIP_REASONS[reason]}`,
      );
    return [{ reason, count, firstLines, ...(example === undefined ? {} : { example }) }];
  });
  const cells = layout.columns.map((column) => {
    const unreadable = column.unreadable.count + (spoilt.get(column.mapping.column) ?? 0);
    const { firstLines, example } = column.unreadable;
    if (unreadable > 0)
      warnings.push(
        `${unreadable} cell${unreadable === 1 ? '' : 's'} of column "${column.mapping.column}" cannot be read${firstLines[0] === undefined ? '' : ` (first: line ${firstLines[0]}, "${example}")`}`,
      );
    return {
      column: column.mapping.column,
      missing: column.missing,
      unreadable,
      firstUnreadableLines: firstLines,
      ...(example === undefined ? {} : { example }),
    };
  });
  return {
    fileName: options.fileName,
    linesRead: rows.linesRead,
    samples: timeS.length,
    skipped,
    cells,
    ignoredColumns: mapping.columns
      .filter(({ channel }) => channel === null)
      .map(({ column, reasons }) => ({ column, reasons: reasons ?? [] })),
    pauses: quality.time.gaps,
    firstTimeS,
    warnings,
  };
}
