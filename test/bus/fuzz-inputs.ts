/**
 * Inputs for fuzzing the capture reader and the slcan decoder, and what must hold of every one of them: no crash, no hang,
 * every line accounted for, and nothing read that a plain second reading of the same lines does not find.
 */
import { SlcanDecoder } from '../../src/capture/slcan-codec.ts';
import { CandumpScanner } from '../../src/recording/bus/candump-scanner.ts';
import { CaptureReader } from '../../src/recording/bus/read-capture.ts';
import { type RandomStream, randomStream } from '../../src/simulation/random.ts';

const encoder = new TextEncoder();
const whole = (random: RandomStream, below: number): number => Math.floor(random.uniform() * below);
const pick = <T>(random: RandomStream, items: readonly T[]): T => items[whole(random, items.length)]!;

const SEEDS = [
  '(1436509052.249713) vcan0 7E8#044132FE0C000000',
  '(1436509052.249713) can0 7E8#100A463C81FEFFCE',
  '(1436509052.349713) can0 7E8#21FF380000000000',
  " (000.000123)  can0  7E8   [8]  04 41 32 FE 0C 00 00 00   '.A2.....'",
  ' (2009-07-02 15:02:05.123456)  can0  18DAF110   [8]  06 41 01 82 07 65 04 00',
  '(1436509052.249713) can0 7E8##1044132FE0C00000000AABBCC',
  '  can0  7DF   [3]  02 01 00',
  '(1436509052.249713) can0 20000040#0000000000000000',
  '(1436509052.249713) can0 7E8#R8',
  '(1436509052.249713) can0 7E8#037F013100000000 R',
] as const;
const BYTES = "()#.: \t\r[]0123456789abcdefABCDEFRTXvcan'_-GZ\u0000\u00ff";

/** One mutated piece of a capture; the same for the same random stream. */
export function fuzzInput(random: RandomStream): string {
  const lines = Array.from({ length: 1 + whole(random, 4) }, () => {
    let line: string = pick(random, SEEDS);
    const changes = whole(random, 4);
    for (let k = 0; k < changes; k++) {
      const at = whole(random, line.length + 1);
      const kind = whole(random, 5);
      if (kind === 0) line = line.slice(0, at) + pick(random, [...BYTES]) + line.slice(at + 1);
      else if (kind === 1) line = line.slice(0, at) + line.slice(at + 1 + whole(random, 4));
      else if (kind === 2)
        line = line.slice(0, at) + pick(random, [...BYTES]).repeat(1 + whole(random, 12)) + line.slice(at);
      else if (kind === 3) line = line.slice(0, at);
      else line = line.slice(at) + line.slice(0, at);
    }
    return line;
  });
  return lines.join(pick(random, ['\n', '\r\n', '\n', '\n\n'])) + pick(random, ['', '\n']);
}

/**
 * A line's frame by a slow reading of its own (regular expressions over text), for the log form only: what the scanner reads
 * as a plain frame of that form must be this.
 */
const LOG_LINE = /^\((\d{1,12})\.(\d{6})\) (\S+) ([0-9A-Fa-f]{3}|[0-9A-Fa-f]{8})#((?:[0-9A-Fa-f]{2}){0,8})\r?$/;

export function plainFrames(text: string): string[] {
  return text.split('\n').flatMap((line) => {
    const match = LOG_LINE.exec(line);
    if (match === null) return [];
    const id = Number.parseInt(match[4]!, 16);
    if (match[4]!.length === 3 ? id > 0x7ff : id > 0x1fffffff) return [];
    return [`${Number(match[1]) + Number(match[2]) / 1e6} ${id} ${match[5]!.toUpperCase()}`];
  });
}

/** Runs one input in pieces through the scanner, the whole reader and the slcan decoder; throws when a rule is broken. */
export function checkInput(text: string, random: RandomStream): void {
  const bytes = encoder.encode(text);
  const seen: string[] = [];
  let frames = 0;
  const scanner = new CandumpScanner(
    {
      frame: ({ timeS, id, fd, length, data }) => {
        frames++;
        let hex = '';
        for (let i = 0; i < length; i++) hex += data[i]!.toString(16).padStart(2, '0');
        if (length > (fd ? 64 : 8)) throw new Error(`a frame of ${length} bytes`);
        seen.push(`${timeS} ${id} ${hex.toUpperCase()}`);
      },
    },
    () => true,
  );
  const reader = new CaptureReader({ fileName: 'fuzz' });
  const decoder = new SlcanDecoder();
  for (let at = 0; at < bytes.length; ) {
    const to = Math.min(bytes.length, at + 1 + whole(random, 90));
    const piece = bytes.subarray(at, to);
    scanner.push(piece);
    reader.push(piece);
    for (const event of decoder.push(piece))
      if (event.kind === 'frame' && (event.frame.data.length > 8 || event.frame.id > 0x1fffffff))
        throw new Error(`slcan gave a frame that cannot be: ${JSON.stringify(event)}`);
    at = to;
  }
  scanner.end();
  const { counts } = scanner;
  let skipped = 0;
  for (const { count } of counts.skipped.values()) skipped += count;
  if (counts.lines !== counts.frames + skipped)
    throw new Error(`${counts.lines} lines, ${counts.frames} frames, ${skipped} skipped`);
  if (frames !== counts.frames) throw new Error(`${frames} frames handed on, ${counts.frames} counted`);
  const expected = plainFrames(text);
  let k = 0;
  for (const frame of seen) if (frame === expected[k]) k++;
  if (k < expected.length) throw new Error(`a plain frame was read otherwise: ${expected[k]}`);
  const { report, recording } = reader.finish();
  if (report.lines !== counts.lines) throw new Error('the reader counts other lines than the scanner');
  for (const values of Object.values(recording?.channels ?? {}))
    for (const value of values)
      if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) throw new Error('infinite value');
}

/** Message of an input that broke a rule, or nothing. */
export function problemOf(text: string, seed: number): string | undefined {
  try {
    checkInput(text, randomStream(seed, 1));
    return undefined;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
