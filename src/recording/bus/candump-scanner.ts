import { isDiagnosticId } from './address.ts';
import { LineParser, type StampForm } from './candump-line.ts';
import { LineCounts } from './capture-counts.ts';
import { type CanFrame, emptyFrame } from './frame.ts';
import { HEX_VALUE } from './hex.ts';

/** Lines of captures have at most some 230 characters; a longer one is no capture. */
const LONGEST_LINE = 4096;
const NEWLINE = 10;
const RETURN = 13;
const SPACE = 32;
const HASH = 35;
const OPEN = 40;
const CLOSE = 41;
const POINT = 46;
/** Stamps of this many digits before the point count from 1970; shorter ones from the first frame or the last one. */
const LONG_STAMP_DIGITS = 9;
const EXAMPLE_CHARS = 60;

export interface ScannerSink {
  /**
   * A frame with a diagnostic identifier; the object is used again for the next one. `sumS` is the sum of all short
   * stamps up to this line, which is the time when the stamps count from the frame before.
   */
  frame(frame: CanFrame, stamp: StampForm, sumS: number): void;
  /** An error frame of the adapter: class bits of linux/can/error.h. */
  errorFrame?(classBits: number, timeS: number | undefined, stamp: StampForm, sumS: number): void;
}

/**
 * Scans candump text in pieces of bytes. Frames of other identifiers are checked and counted, not handed on.
 * The log form with plain frames is parsed in one pass in place; all else goes to LineParser.
 */
export class CandumpScanner {
  readonly counts = new LineCounts();
  private readonly sink: ScannerSink;
  private readonly wants: (id: number, extended: boolean) => boolean;
  private readonly frame = emptyFrame();
  private readonly parser = new LineParser();
  private readonly rest = new Uint8Array(LONGEST_LINE + 1);
  private restLength = 0;
  private isTooLong = false;
  private sumS = 0;
  private lastShortS = 0;
  /** Frames with a short stamp, and those whose stamp is smaller than the one before. */
  shortStamps = 0;
  shortFalls = 0;

  constructor(sink: ScannerSink, wants: (id: number, extended: boolean) => boolean = isDiagnosticId) {
    this.sink = sink;
    this.wants = wants;
  }

  push(piece: Uint8Array): void {
    this.counts.bytes += piece.length;
    let from = 0;
    if (this.restLength > 0 || this.isTooLong) {
      const end = piece.indexOf(NEWLINE);
      if (end < 0) {
        this.keep(piece, 0);
        return;
      }
      this.keep(piece.subarray(0, end + 1), 0);
      this.endRest();
      from = end + 1;
    }
    const last = piece.lastIndexOf(NEWLINE);
    if (last >= from) {
      this.scan(piece, from, last + 1);
      from = last + 1;
    }
    if (from < piece.length) this.keep(piece, from);
  }

  /** The last line may lack its newline; it counts all the same, but may be cut off, so its data length must fit. */
  end(): void {
    if (this.restLength === 0 && !this.isTooLong) return;
    this.rest[this.restLength++] = NEWLINE;
    this.endRest();
  }

  private keep(piece: Uint8Array, from: number): void {
    const room = LONGEST_LINE - this.restLength;
    const length = piece.length - from;
    if (length > room) {
      this.isTooLong = true;
      this.rest.set(piece.subarray(from, from + room), this.restLength);
      this.restLength = LONGEST_LINE;
      return;
    }
    this.rest.set(from === 0 ? piece : piece.subarray(from), this.restLength);
    this.restLength += length;
  }

  private endRest(): void {
    const length = this.restLength;
    this.restLength = 0;
    if (this.isTooLong) {
      this.isTooLong = false;
      this.counts.lines++;
      this.counts.skip('too-long', asciiText(this.rest, 0, EXAMPLE_CHARS));
      return;
    }
    this.scan(this.rest, 0, length);
  }

  /** Whole lines from `from`; the byte before `stop` is a newline, so every inner loop ends by itself. */
  private scan(bytes: Uint8Array, from: number, stop: number): void {
    let p = from;
    while (p < stop) {
      this.counts.lines++;
      const next = bytes[p] === OPEN ? this.scanLogLine(bytes, p) : -1;
      if (next > 0) {
        p = next;
        continue;
      }
      const start = p;
      while (bytes[p] !== NEWLINE) p++;
      this.parseSlowly(bytes, start, p);
      p++;
    }
  }

  /** A line of the log form with a plain frame; where the next line begins, or -1 when it is anything else. */
  private scanLogLine(bytes: Uint8Array, start: number): number {
    const { frame } = this;
    let p = start;
    let whole = 0;
    let digit = bytes[++p]! - 48;
    while (digit >= 0 && digit < 10) {
      whole = whole * 10 + digit;
      digit = bytes[++p]! - 48;
    }
    const isShort = p - start <= LONG_STAMP_DIGITS;
    if (p - start < 2 || p - start > 13 || bytes[p] !== POINT) return -1;
    const fractionAt = p + 1;
    let fraction = 0;
    digit = bytes[++p]! - 48;
    while (digit >= 0 && digit < 10) {
      fraction = fraction * 10 + digit;
      digit = bytes[++p]! - 48;
    }
    if (p - fractionAt !== 6 || bytes[p] !== CLOSE || bytes[p + 1] !== SPACE) return -1;
    p += 2;
    const nameAt = p;
    while (bytes[p]! > SPACE) p++;
    if (bytes[p] !== SPACE || p === nameAt) return -1;
    const idAt = ++p;
    let id = 0;
    let hex = HEX_VALUE[bytes[p]!]!;
    while (hex < 16) {
      id = (id << 4) | hex;
      hex = HEX_VALUE[bytes[++p]!]!;
    }
    const idDigits = p - idAt;
    if (bytes[p] !== HASH || (idDigits === 3 ? id > 0x7ff : idDigits !== 8 || id >>> 29 !== 0)) return -1;
    p++;
    const timeS = whole + fraction / 1e6;
    const isWanted = this.wants(id, idDigits === 8);
    const dataAt = p;
    let length = 0;
    if (isWanted) {
      const { data } = frame;
      let high = HEX_VALUE[bytes[p]!]!;
      while (high < 16 && length < 8) {
        const low = HEX_VALUE[bytes[p + 1]!]!;
        if (low > 15) return -1;
        data[length++] = (high << 4) | low;
        p += 2;
        high = HEX_VALUE[bytes[p]!]!;
      }
    } else {
      while (HEX_VALUE[bytes[p]!]! < 16) p++;
      length = (p - dataAt) >> 1;
      if (((p - dataAt) & 1) !== 0 || length > 8) return -1;
    }
    if (bytes[p] === RETURN) p++;
    if (bytes[p] !== NEWLINE) return -1;
    this.counts.frames++;
    if (isShort) this.addShort(timeS);
    if (isWanted) {
      frame.timeS = timeS;
      frame.id = id;
      frame.extended = idDigits === 8;
      frame.fd = false;
      frame.length = length;
      this.sink.frame(frame, isShort ? 'short' : 'long', this.sumS);
    }
    return p + 1;
  }

  private addShort(timeS: number): void {
    this.shortStamps++;
    if (timeS < this.lastShortS) this.shortFalls++;
    this.lastShortS = timeS;
    this.sumS += timeS;
  }

  private parseSlowly(bytes: Uint8Array, from: number, to: number): void {
    const { frame, counts } = this;
    if (to - from > LONGEST_LINE) {
      counts.skip('too-long', asciiText(bytes, from, from + EXAMPLE_CHARS));
      return;
    }
    const { reason, stamp } = this.parser.parse(bytes, from, to, frame);
    if (reason === undefined) {
      counts.frames++;
      if (stamp === 'short') this.addShort(frame.timeS!);
      if (this.wants(frame.id, frame.extended)) this.sink.frame(frame, stamp, this.sumS);
      return;
    }
    if (reason === 'error-frame' || reason === 'remote') {
      if (stamp === 'short' && frame.timeS !== undefined) this.addShort(frame.timeS);
      if (reason === 'error-frame') this.sink.errorFrame?.(frame.id, frame.timeS, stamp, this.sumS);
    }
    counts.skip(reason, asciiText(bytes, from, Math.min(to, from + EXAMPLE_CHARS + 1)));
  }
}

function asciiText(bytes: Uint8Array, from: number, to: number): string {
  let text = '';
  for (let i = from; i < to; i++) {
    const byte = bytes[i]!;
    text += byte >= 32 && byte < 127 ? String.fromCharCode(byte) : '?';
  }
  return text;
}
