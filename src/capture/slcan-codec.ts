/**
 * The ASCII protocol that Linux's slcan driver speaks (drivers/net/can/slcan): `t7E080201...` with 11-bit and
 * `T18DA10F18...` with 29-bit identifiers, each ended by a carriage return; a bell answers what was refused.
 */
import { HEX_VALUE, hexText } from '../recording/bus/hex.ts';
import type { BusFrame } from './frame-port.ts';

const RETURN = 13;
const BELL = 7;
const LONGEST_LINE = 64;

/** Bit rates of the S command. */
export const BIT_RATE_COMMANDS: Readonly<Record<number, string>> = {
  10000: 'S0',
  20000: 'S1',
  50000: 'S2',
  100000: 'S3',
  125000: 'S4',
  250000: 'S5',
  500000: 'S6',
  800000: 'S7',
  1000000: 'S8',
};

/** A frame as a line with its carriage return. */
export function encodeSlcan({ id, extended, data }: BusFrame): string {
  const digits = id
    .toString(16)
    .toUpperCase()
    .padStart(extended ? 8 : 3, '0');
  return `${extended ? 'T' : 't'}${digits}${data.length}${hexText(data)}\r`;
}

export type SlcanEvent =
  | { readonly kind: 'frame'; readonly frame: BusFrame }
  /** Anything else, without its end: a command, an acknowledgement (`z`, `Z` or empty), a version. */
  | { readonly kind: 'line'; readonly text: string }
  | { readonly kind: 'refused' }
  | { readonly kind: 'damaged'; readonly text: string };

/** Cuts a stream of bytes into events; a line that is damaged is told, never taken for a frame. */
export class SlcanDecoder {
  private readonly line = new Uint8Array(LONGEST_LINE);
  private length = 0;
  private isTooLong = false;

  push(bytes: Uint8Array): SlcanEvent[] {
    const events: SlcanEvent[] = [];
    for (const byte of bytes) {
      if (byte === BELL) {
        events.push({ kind: 'refused' });
        this.reset();
      } else if (byte === RETURN) {
        events.push(this.isTooLong ? { kind: 'damaged', text: this.text() } : this.event());
        this.reset();
      } else if (byte === 10 && this.length === 0) {
        // Some adapters end with both.
      } else if (this.length < LONGEST_LINE) this.line[this.length++] = byte;
      else this.isTooLong = true;
    }
    return events;
  }

  private reset(): void {
    this.length = 0;
    this.isTooLong = false;
  }

  private text(): string {
    return String.fromCharCode(...this.line.subarray(0, this.length));
  }

  private event(): SlcanEvent {
    const kind = this.line[0];
    if (kind !== 116 && kind !== 84) return { kind: 'line', text: this.text() };
    const extended = kind === 84;
    const idDigits = extended ? 8 : 3;
    let id = 0;
    for (let i = 1; i <= idDigits; i++) {
      const digit = i < this.length ? HEX_VALUE[this.line[i]!]! : 255;
      if (digit > 15) return { kind: 'damaged', text: this.text() };
      id = id * 16 + digit;
    }
    const count = this.length > 1 + idDigits ? this.line[1 + idDigits]! - 48 : -1;
    const from = 2 + idDigits;
    const rest = this.length - from - 2 * count;
    // A time stamp of four digits may follow.
    if (count < 0 || count > 8 || (rest !== 0 && rest !== 4) || id > (extended ? 0x1fffffff : 0x7ff))
      return { kind: 'damaged', text: this.text() };
    const data = new Uint8Array(count);
    for (let i = 0; i < count; i++) {
      const high = HEX_VALUE[this.line[from + 2 * i]!]!;
      const low = HEX_VALUE[this.line[from + 2 * i + 1]!]!;
      if (high > 15 || low > 15) return { kind: 'damaged', text: this.text() };
      data[i] = (high << 4) | low;
    }
    return { kind: 'frame', frame: { id, extended, data } };
  }
}
