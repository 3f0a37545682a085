import type { LineReason } from './capture-counts.ts';
import { type CanFrame, LONGEST_DATA } from './frame.ts';
import { HEX_VALUE } from './hex.ts';

/** How a line's stamp is written; it decides what the numbers count from. */
export type StampForm = 'long' | 'short' | 'date' | 'none';

export interface ParsedLine {
  reason: LineReason | undefined;
  stamp: StampForm;
}

const SPACE = 32;
const TAB = 9;
const OPEN = 40;
const CLOSE = 41;
const HASH = 35;
const BRACKET = 91;
const BRACKET_END = 93;
const NEWLINE = 10;
const RETURN = 13;
const DAY_S = 86_400;
const ERROR_FLAG = 0x20000000;
const ID_BITS = 0x1fffffff;

const isDigit = (byte: number | undefined): boolean => byte !== undefined && byte >= 48 && byte <= 57;
const isBlank = (byte: number | undefined): boolean => byte === SPACE || byte === TAB;

/** Days since 1970-01-01 of a date of the Gregorian calendar. */
function daysSince1970(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const ofEra = y - era * 400;
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  return era * 146_097 + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719_468;
}

/**
 * Parses any line of candump's text forms that the quick way of the scanner leaves aside: the console form
 * (`can0  7E8   [8]  04 41 ...`, with or without stamps, directions and letters behind), flexible data rate, remote
 * frames, dates as stamps. Works on bytes from `at` to the newline; fills `frame` where there is one.
 */
export class LineParser {
  readonly result: ParsedLine = { reason: undefined, stamp: 'none' };
  private bytes: Uint8Array = new Uint8Array(0);
  private at = 0;
  private end = 0;

  /** Parses the line of `bytes` from `from` to before `to`. */
  parse(bytes: Uint8Array, from: number, to: number, frame: CanFrame): ParsedLine {
    this.bytes = bytes;
    this.at = from;
    this.end = to;
    while (this.end > from && (bytes[this.end - 1] === RETURN || isBlank(bytes[this.end - 1]))) this.end--;
    this.result.stamp = 'none';
    this.result.reason = this.line(frame);
    return this.result;
  }

  private line(frame: CanFrame): LineReason | undefined {
    this.skipBlanks();
    if (this.at >= this.end) return 'blank';
    frame.timeS = undefined;
    const first = this.bytes[this.at];
    if (first === HASH || first === 59) return 'remark';
    if (first === OPEN && !this.stamp(frame)) return 'bad-stamp';
    this.skipBlanks();
    // The interface's name.
    const before = this.at;
    while (this.at < this.end && !isBlank(this.bytes[this.at])) this.at++;
    if (this.at === before) return 'no-frame';
    this.skipBlanks();
    this.skipDirection();
    return this.identifier(frame);
  }

  private skipBlanks(): void {
    while (this.at < this.end && isBlank(this.bytes[this.at])) this.at++;
  }

  /** `RX - -` and `TX B E`, which candump -x puts before the identifier. */
  private skipDirection(): void {
    const { bytes } = this;
    if ((bytes[this.at] !== 82 && bytes[this.at] !== 84) || bytes[this.at + 1] !== 88 || !isBlank(bytes[this.at + 2]))
      return;
    this.at += 2;
    this.skipBlanks();
    for (let flags = 0; flags < 2; flags++) {
      const flag = bytes[this.at];
      if ((flag === 45 || flag === 66 || flag === 69) && isBlank(bytes[this.at + 1])) this.at++;
      this.skipBlanks();
    }
  }

  private number(): number {
    let value = 0;
    while (this.at < this.end && isDigit(this.bytes[this.at])) value = value * 10 + this.bytes[this.at++]! - 48;
    return value;
  }

  private fraction(): number | undefined {
    if (this.bytes[this.at] !== 46) return undefined;
    const from = ++this.at;
    const value = this.number();
    const digits = this.at - from;
    return digits === 0 || digits > 9 ? undefined : value / 10 ** digits;
  }

  private stamp(frame: CanFrame): boolean {
    this.at++;
    const from = this.at;
    const whole = this.number();
    const digits = this.at - from;
    if (digits === 0 || digits > 12) return false;
    let timeS: number | undefined;
    if (this.bytes[this.at] === 45 && digits === 4) timeS = this.date(whole);
    else {
      const fraction = this.fraction();
      if (fraction === undefined) return false;
      timeS = whole + fraction;
      this.result.stamp = digits >= 9 ? 'long' : 'short';
    }
    if (timeS === undefined || this.bytes[this.at] !== CLOSE || this.at >= this.end) return false;
    this.at++;
    frame.timeS = timeS;
    return true;
  }

  /** `2009-07-02 15:02:05.123456`, taken as it stands: candump prints local time without its zone. */
  private date(year: number): number | undefined {
    const part = (separator: number): number => {
      if (this.bytes[this.at] !== separator) return Number.NaN;
      this.at++;
      return isDigit(this.bytes[this.at]) ? this.number() : Number.NaN;
    };
    const month = part(45);
    const day = part(45);
    const hour = part(SPACE);
    const minute = part(58);
    const second = part(58);
    const fraction = this.fraction();
    if (fraction === undefined || !(month >= 1 && month <= 12 && day >= 1 && day <= 31)) return undefined;
    if (!(hour < 24 && minute < 60 && second <= 60)) return undefined;
    this.result.stamp = 'date';
    return daysSince1970(year, month, day) * DAY_S + hour * 3600 + minute * 60 + second + fraction;
  }

  private identifier(frame: CanFrame): LineReason | undefined {
    const { bytes } = this;
    const from = this.at;
    let id = 0;
    while (this.at < this.end && HEX_VALUE[bytes[this.at]!]! < 16)
      id = ((id << 4) | HEX_VALUE[bytes[this.at++]!]!) >>> 0;
    const digits = this.at - from;
    const next = this.at < this.end ? bytes[this.at] : NEWLINE;
    if (next !== HASH && !isBlank(next)) return 'no-frame';
    if (digits !== 3 && digits !== 8) return digits === 0 ? 'no-frame' : 'bad-id';
    if (digits === 3 && id > 0x7ff) return 'bad-id';
    if (digits === 8 && (id & ERROR_FLAG) !== 0) {
      frame.id = id & ID_BITS;
      return id >>> 29 === 1 ? 'error-frame' : 'bad-id';
    }
    if (id > ID_BITS) return 'bad-id';
    frame.id = id;
    frame.extended = digits === 8;
    frame.fd = false;
    return next === HASH ? this.logData(frame) : this.consoleData(frame);
  }

  private pair(): number {
    const { bytes } = this;
    const high = this.at + 1 < this.end ? HEX_VALUE[bytes[this.at]!]! : 255;
    const low = this.at + 1 < this.end ? HEX_VALUE[bytes[this.at + 1]!]! : 255;
    if (high > 15 || low > 15) return -1;
    this.at += 2;
    return (high << 4) | low;
  }

  /** Behind `7E8#`: pairs, `#` and a flag digit for flexible data rate, or `R` for a remote frame. */
  private logData(frame: CanFrame): LineReason | undefined {
    const { bytes } = this;
    this.at++;
    if (bytes[this.at] === 82 && this.at < this.end) return 'remote';
    if (bytes[this.at] === HASH && this.at < this.end) {
      frame.fd = true;
      this.at++;
      if (this.at >= this.end || HEX_VALUE[bytes[this.at]!]! > 15) return 'bad-data';
      this.at++;
    }
    let length = 0;
    while (this.at < this.end && !isBlank(bytes[this.at])) {
      if (bytes[this.at] === 46 && length > 0) this.at++;
      // `_` and a digit: the raw length code of an eight-byte frame.
      if (bytes[this.at] === 95 && length === 8) break;
      const value = this.pair();
      if (value < 0) return 'bad-data';
      if (length >= LONGEST_DATA) return 'too-much-data';
      frame.data[length++] = value;
    }
    frame.length = length;
    if (!frame.fd && length > 8) return 'too-much-data';
    return undefined;
  }

  /** Behind the identifier: `[8]  04 41 0D 28`, with anything printable behind that. */
  private consoleData(frame: CanFrame): LineReason | undefined {
    const { bytes } = this;
    this.skipBlanks();
    if (bytes[this.at] !== BRACKET || this.at >= this.end) return 'no-frame';
    this.at++;
    const from = this.at;
    const length = this.number();
    const digits = this.at - from;
    if (digits === 0 || digits > 2 || bytes[this.at] !== BRACKET_END) return 'bad-data';
    this.at++;
    frame.fd = digits === 2;
    if (length > (frame.fd ? LONGEST_DATA : 8)) return 'too-much-data';
    this.skipBlanks();
    if (bytes[this.at] === 114 && this.at < this.end) return 'remote';
    if (bytes[this.at] === 69 && bytes[this.at + 1] === 82 && bytes[this.at + 2] === 82) return 'error-frame';
    for (let i = 0; i < length; i++) {
      this.skipBlanks();
      const value = this.pair();
      if (value < 0 || (this.at < this.end && !isBlank(bytes[this.at]))) return 'bad-data';
      frame.data[i] = value;
    }
    frame.length = length;
    this.skipBlanks();
    // Behind the data there may be letters in quotes; more data than it said is a damaged line.
    return this.at < this.end && bytes[this.at] !== 39 ? 'bad-data' : undefined;
  }
}
