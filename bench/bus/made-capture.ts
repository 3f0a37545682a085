/** A capture as it comes from a car at work, made in pieces from a seed: other frames of the bus, and a tester that asks. */
import { randomStream } from '../../src/simulation/random.ts';

const PIECE_BYTES = 1 << 18;
const encoder = new TextEncoder();

/** Share of diagnostic frames among all, as on a bus of 2000 frames a second with a tester that polls (judgement). */
export interface MadeCapture {
  readonly bytes: number;
  readonly form: 'log' | 'console';
  readonly seed: number;
  readonly diagnosticShare: number;
}

const hex = (value: number, digits: number): string => value.toString(16).toUpperCase().padStart(digits, '0');

/** A block of lines whose stamps are filled in anew at each turn, so that making it costs little. */
export function* madeCapture({ bytes, form, seed, diagnosticShare }: MadeCapture): Generator<Uint8Array> {
  const random = randomStream(seed);
  const lines: string[] = [];
  let length = 0;
  while (length < PIECE_BYTES) {
    const isDiagnostic = random.uniform() < diagnosticShare;
    const id = isDiagnostic ? (lines.length % 2 === 0 ? 0x7e0 : 0x7e8) : 0x100 + Math.floor(random.uniform() * 0x400);
    const data = Array.from({ length: 8 }, () => Math.floor(random.uniform() * 256));
    if (id === 0x7e0) data.splice(0, 3, 2, 1, 0x32);
    if (id === 0x7e8) data.splice(0, 5, 4, 0x41, 0x32, Math.floor(random.uniform() * 4), data[4]!);
    const text =
      form === 'log'
        ? `can0 ${hex(id, 3)}#${data.map((byte) => hex(byte, 2)).join('')}\n`
        : ` can0  ${hex(id, 3)}   [8]  ${data.map((byte) => hex(byte, 2)).join(' ')}\n`;
    lines.push(form === 'log' ? `(0000000000.000000) ${text}` : ` (0000000000.000000) ${text}`);
    length += lines.at(-1)!.length;
  }
  const block = encoder.encode(lines.join(''));
  const stampsAt: number[] = [];
  for (let at = 0; at < block.length; at++) if (block[at] === 40) stampsAt.push(at + 1);
  let micros = 1_700_000_000e6;
  for (let made = 0; made < bytes; made += block.length) {
    for (const at of stampsAt) {
      micros += 450;
      let rest = micros;
      for (let k = 16; k >= 0; k--) {
        if (k === 10) continue;
        block[at + k] = 48 + (rest % 10);
        rest = Math.floor(rest / 10);
      }
    }
    yield block;
  }
}
