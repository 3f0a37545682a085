/**
 * Inputs for fuzzing the capture reader, and what must hold of every one of them: no crash, no hang, every line accounted
 * for, and nothing read that a plain second reading of the same lines does not find.
 */
import { CandumpScanner } from '../../src/recording/bus/candump-scanner.ts';
import { hexText } from '../../src/recording/bus/hex.ts';
import { CaptureReader } from '../../src/recording/bus/read-capture.ts';
import { segmentMessage } from '../../src/recording/bus/segment-message.ts';
import type { RandomStream } from '../../src/simulation/random.ts';
import { mutated, pick, whole } from './mutate.ts';

const encoder = new TextEncoder();

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
const BYTES = [..."()#.: \t\r[]0123456789abcdefABCDEFRTXvcan'_-GZ\u0000\u00ff"];

/** One mutated piece of a capture; the same for the same random stream. */
export function captureInput(random: RandomStream): string {
  const lines =
    random.uniform() < 0.3
      ? messageLines(random)
      : Array.from({ length: 1 + whole(random, 4) }, () => mutated(random, pick(random, SEEDS), BYTES));
  return lines.join(pick(random, ['\n', '\r\n', '\n', '\n\n'])) + pick(random, ['', '\n']);
}

const SERVICES = [0x41, 0x42, 0x43, 0x46, 0x47, 0x49, 0x4a, 0x44, 0x7f] as const;

/** A message in several frames, of which some come twice, late, mutated or not at all. */
function messageLines(random: RandomStream): string[] {
  const bytes = Uint8Array.from({ length: 8 + whole(random, 60) }, () => whole(random, 256));
  bytes[0] = pick(random, SERVICES);
  if (bytes[0] === 0x41) bytes[1] = pick(random, [0x01, 0x0c, 0x2e, 0x32, 0x41, 0x53, 0x54]);
  const id = pick(random, ['7E8', '7E9', '18DAF110']);
  let timeS = 1_436_509_052 + random.uniform();
  const lines = segmentMessage(bytes).map((data) => {
    timeS += pick(random, [0.001, 0.001, 0.02, 0.2, -0.05]);
    return `(${timeS.toFixed(6)}) can0 ${id}#${hexText(data)}`;
  });
  const fate = whole(random, 5);
  const at = whole(random, lines.length);
  if (fate === 0) lines.splice(at, 1);
  else if (fate === 1) lines.splice(at, 0, lines[at]!);
  else if (fate === 2) lines.push(...lines.splice(at, 1));
  else if (fate === 3) lines[at] = mutated(random, lines[at]!, BYTES);
  return lines;
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

/** Runs one input in pieces through the scanner and the whole reader; throws when a rule is broken. */
export function checkCapture(text: string, random: RandomStream): void {
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
  for (let at = 0; at < bytes.length; ) {
    const to = Math.min(bytes.length, at + 1 + whole(random, 90));
    const piece = bytes.subarray(at, to);
    scanner.push(piece);
    reader.push(piece);
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
