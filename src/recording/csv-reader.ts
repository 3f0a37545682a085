import Papa from 'papaparse';
import { type AssembleOptions, assembleRecording, type CsvReading } from './assemble-recording.ts';
import { CsvError } from './csv-error.ts';
import { isRepeat, stripReturn } from './csv-format.ts';
import { type CsvLayout, findLayout } from './csv-layout.ts';
import type { Mapping } from './mapping.ts';
import { GrowingNumbers } from './raw-column.ts';
import { type SkipReason, Tally } from './read-report.ts';
import { describeNonText, detectEncoding, type MakeTextDecoder, type TextDecoderPort } from './text-encoding.ts';
import { type TimeOfRow, timeReader } from './time-cells.ts';

/** So much text is looked at before the layout is decided. */
const HEAD_CHARS = 65_536;
/** Text is parsed in pieces of this size, so that rows do not pile up in memory: they die young. */
const PIECE_CHARS = 65_536;
/** A row this long is an opened quote that is never closed. */
const LONGEST_ROW_CHARS = 4_194_304;
const LINE_BREAK = /[\n\r]/;

export interface CsvReadOptions extends AssembleOptions {
  readonly mapping?: Mapping;
  /** Turns bytes into text; needed only when bytes are pushed. The platform's TextDecoder does. */
  readonly decoder?: MakeTextDecoder;
}

/** Reads one CSV recording from pieces of text or bytes, in constant extra memory. */
export class CsvRecordingReader {
  private readonly options: CsvReadOptions;
  private decoder: TextDecoderPort | undefined;
  private firstBytes: Uint8Array = new Uint8Array(0);
  private head = '';
  private rest = '';
  private layout: CsvLayout | undefined;
  private parser: InstanceType<typeof Papa.Parser> | undefined;
  private timeOf: TimeOfRow = () => Number.NaN;
  private row = 0;
  private line = 1;
  private readonly times = new GrowingNumbers();
  private readonly lines = new GrowingNumbers();
  private readonly skipped = new Map<SkipReason, Tally>();
  private firstTimeText = '';
  private mayHoldBreaks = false;

  constructor(options: CsvReadOptions) {
    this.options = options;
  }

  push(chunk: string | Uint8Array): void {
    if (typeof chunk === 'string') this.pushText(chunk);
    else this.pushBytes(chunk);
  }

  /** Ends the file and gives the whole recording; throws a CsvError when it cannot be read. */
  finish(): CsvReading {
    if (this.firstBytes.length > 0) this.startDecoding();
    if (this.decoder) this.pushText(this.decoder.decode(new Uint8Array(0)));
    if (!this.layout) this.start();
    this.parse(true);
    return assembleRecording(this.options, this.layout!, {
      timeS: this.times.values(),
      lines: this.lines.values(),
      skipped: this.skipped,
      linesRead: this.line - 1,
      firstTimeText: this.firstTimeText,
    });
  }

  private pushBytes(bytes: Uint8Array): void {
    if (this.decoder) {
      this.pushText(this.decoder.decode(bytes, { stream: true }));
      return;
    }
    const joined = new Uint8Array(this.firstBytes.length + bytes.length);
    joined.set(this.firstBytes);
    joined.set(bytes, this.firstBytes.length);
    this.firstBytes = joined;
    if (joined.length >= HEAD_CHARS) this.startDecoding();
  }

  private startDecoding(): void {
    const make = this.options.decoder;
    if (!make) throw new Error('bytes were pushed to a CSV reader that was given no decoder');
    const decoder = make(detectEncoding(this.firstBytes.subarray(0, HEAD_CHARS)));
    this.decoder = decoder;
    const text = decoder.decode(this.firstBytes, { stream: true });
    this.firstBytes = new Uint8Array(0);
    this.pushText(text);
  }

  private pushText(text: string): void {
    if (!this.layout) {
      this.head += text;
      if (this.head.length < HEAD_CHARS) return;
      this.start();
      this.parse(false);
      return;
    }
    this.rest += text;
    if (this.rest.length >= PIECE_CHARS) this.parse(false);
  }

  private start(): void {
    const { fileName, mapping } = this.options;
    const head = this.head.replace(/^\ufeff/, '');
    const other = describeNonText(head.slice(0, 2048));
    if (other !== undefined || head.trim() === '')
      throw new CsvError({
        fileName,
        line: 1,
        found: other ?? 'an empty file',
        expected: 'a text table with a header line and a time column',
        whatToDo: 'Export the recording as CSV and read that',
      });
    const cut = Math.max(head.lastIndexOf('\n', HEAD_CHARS), head.lastIndexOf('\r', HEAD_CHARS));
    this.layout = findLayout(head.length > HEAD_CHARS && cut > 0 ? head.slice(0, cut + 1) : head, fileName, mapping);
    const { delimiter, newline, decimal } = this.layout.format;
    this.parser = new Papa.Parser({ delimiter, newline });
    this.timeOf = timeReader(this.layout.time, decimal);
    this.rest = head;
    this.head = '';
  }

  /** Parses what is waiting; at the end the last row too, else it stays until its line is complete. */
  private parse(last: boolean): void {
    let text = this.rest;
    let size = PIECE_CHARS;
    while (text !== '') {
      const whole = text.length <= size;
      const used = this.parsePiece(whole ? text : text.slice(0, size), whole && last);
      text = whole && last ? '' : text.slice(used);
      if (whole) break;
      // Nothing used: a quoted cell reaches over the piece.
      size = used > 0 ? PIECE_CHARS : size * 2;
    }
    if (text.length > LONGEST_ROW_CHARS)
      throw this.quoteError('a quote that is not closed within 4 million characters');
    this.rest = text;
  }

  private parsePiece(piece: string, last: boolean): number {
    const { data, errors, meta } = this.parser!.parse(piece, 0, !last);
    // What follows the last line break is no line.
    if (last && piece.endsWith(this.layout!.format.newline)) data.pop();
    const error = errors[0];
    if (error) {
      for (let k = 0; k < Math.min(error.row ?? 0, data.length); k++) this.line += this.breaksIn(data[k]!) + 1;
      throw this.quoteError(error.message);
    }
    this.mayHoldBreaks = piece.includes('"');
    for (const row of data) this.takeRow(stripReturn(row));
    return meta.cursor;
  }

  private quoteError(found: string): CsvError {
    return new CsvError({
      fileName: this.options.fileName,
      line: this.line,
      found,
      expected: 'cells with both quotes or none',
      whatToDo: 'Correct the quotes in that line or the ones after it',
    });
  }

  private breaksIn(row: readonly string[]): number {
    let breaks = 0;
    for (const cell of row) if (LINE_BREAK.test(cell)) breaks += cell.split('\n').length - 1;
    return breaks;
  }

  private skip(reason: SkipReason, example: string): void {
    let tally = this.skipped.get(reason);
    if (!tally) {
      tally = new Tally();
      this.skipped.set(reason, tally);
    }
    tally.add(this.line, example);
  }

  private takeRow(row: readonly string[]): void {
    const { format, timeIndices, columns } = this.layout!;
    const at = this.row++;
    if (at < format.dataRow) this.takeHeadRow(row, at);
    else {
      const reason = this.checkShape(row);
      if (reason === undefined) {
        const [first, second] = timeIndices;
        const cell = row[first!]!;
        const time = this.timeOf(cell, second === undefined ? undefined : row[second]);
        if (Number.isNaN(time)) this.skipWithoutTime(row, cell);
        else {
          if (this.times.length === 0) this.firstTimeText = cell;
          this.times.push(time);
          this.lines.push(this.line);
          for (let k = 0; k < columns.length; k++) {
            const column = columns[k]!;
            column.push(row[column.index]!, this.line);
          }
        }
      } else this.skip(reason, row.join(format.delimiter));
    }
    this.line++;
  }

  private takeHeadRow(row: readonly string[], at: number): void {
    const { format } = this.layout!;
    const text = row.join(format.delimiter);
    if (at === format.headerRow) this.skip('header', text);
    else if (text.trim() === '') this.skip('blank', text);
    else if (format.unitRow && at === format.headerRow + 1) this.skip('unit-row', text);
    else this.skip('preamble', text);
    const breaks = this.breaksIn(row);
    for (let k = 0; k < breaks; k++) {
      this.line++;
      this.skip('preamble', text);
    }
  }

  private checkShape(row: readonly string[]): SkipReason | undefined {
    const { width } = this.layout!;
    if (this.mayHoldBreaks && row.some((cell) => LINE_BREAK.test(cell)))
      throw this.quoteError('a quoted cell that runs over several lines');
    if (row.length === width) return undefined;
    if (row.length === 1 && row[0]!.trim() === '') return 'blank';
    if (row[0]!.startsWith('#') || row[0]!.startsWith('//')) return 'comment';
    if (row.length < width) return 'too-few-cells';
    for (let k = width; k < row.length; k++) if (row[k]!.trim() !== '') return 'too-many-cells';
    return undefined;
  }

  private skipWithoutTime(row: readonly string[], cell: string): void {
    const { format } = this.layout!;
    const text = row.join(format.delimiter);
    if (row.every((each) => each.trim() === '')) this.skip('blank', text);
    else if (cell.trim() === '') this.skip('no-time', text);
    else if (row[0]!.startsWith('#')) this.skip('comment', text);
    else if (isRepeat(row, format.rawHeader)) this.skip('repeated-header', text);
    else this.skip('unreadable-time', text);
  }
}
