/**
 * Speed and memory of reading candump text, against a plain line splitter over the same bytes in the same run.
 *
 * `npx tsx bench/bus/bus.ts [megabytes] [runs]`: 200 MB in memory-sized pieces by default; then 1 GB once for the
 * memory that stays (`--expose-gc` is not needed: it is the resident size at its highest). Prints a table and a JSON line.
 */
import { CaptureReader } from '../../src/recording/bus/read-capture.ts';
import { madeCapture } from './made-capture.ts';

const megabytes = Number(process.argv[2] ?? 200);
const runs = Number(process.argv[3] ?? 3);
const GIGABYTE = 1e9;
const SHARE = 0.05;

/** The plainest way to lines in JavaScript: text of the piece, split at newlines, the last one kept for the next. */
function splitLines(pieces: Iterable<Uint8Array>): number {
  const decoder = new TextDecoder('latin1');
  let rest = '';
  let lines = 0;
  for (const piece of pieces) {
    const parts = (rest + decoder.decode(piece, { stream: true })).split('\n');
    rest = parts.pop()!;
    for (const line of parts) if (line.length > 0) lines++;
  }
  return lines;
}

function readAll(pieces: Iterable<Uint8Array>): { samples: number; frames: number } {
  const reader = new CaptureReader({ fileName: 'made in memory' });
  for (const piece of pieces) reader.push(piece);
  const { report } = reader.finish();
  if (report.lines !== report.frames) throw new Error(`${report.lines - report.frames} lines were not read`);
  return { samples: report.items.reduce((sum, item) => sum + item.samples, 0), frames: report.frames };
}

/** Processor time and not wall time: the machine may have other work. */
const seconds = (work: () => void): number => {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
};
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;
const capture = (form: 'log' | 'console', bytes: number) =>
  madeCapture({ bytes, form, seed: 7, diagnosticShare: SHARE });

const bytes = megabytes * 1e6;
const made: number[] = [];
const split: number[] = [];
const log: number[] = [];
const consoleForm: number[] = [];
for (let run = 0; run < runs; run++) {
  made.push(seconds(() => void [...mapLength(capture('log', bytes))]));
  split.push(seconds(() => splitLines(capture('log', bytes))));
  log.push(seconds(() => readAll(capture('log', bytes))));
  consoleForm.push(seconds(() => readAll(capture('console', bytes))));
}
/** The cost of making the bytes is taken off all others. */
function* mapLength(pieces: Iterable<Uint8Array>): Generator<number> {
  for (const piece of pieces) yield piece.length;
}
const makeS = median(made);
const rate = (values: readonly number[]): number => megabytes / Math.max(1e-9, median(values) - makeS);

let highestMb = 0;
const watch = (pieces: Iterable<Uint8Array>) =>
  (function* () {
    let count = 0;
    for (const piece of pieces) {
      if (count++ % 64 === 0) highestMb = Math.max(highestMb, process.memoryUsage().rss / 1e6);
      yield piece;
    }
  })();
const large = readAll(watch(capture('log', GIGABYTE)));
highestMb = Math.max(highestMb, process.memoryUsage().rss / 1e6);

const row = (name: string, value: number, unit: string) => `${name.padEnd(34)} ${value.toFixed(1).padStart(8)} ${unit}`;
const ratio = rate(log) / rate(split);
process.stdout.write(
  [
    row('plain line splitter', rate(split), 'MB/s'),
    row('reader, log form', rate(log), 'MB/s'),
    row('reader, console form', rate(consoleForm), 'MB/s'),
    row('reader / splitter', ratio, ''),
    row('resident, 1 GB read, at its highest', highestMb, 'MB'),
    row('frames of the 1 GB', large.frames / 1e6, 'million'),
    '',
  ].join('\n'),
);
process.stdout.write(
  `${JSON.stringify({
    bench: 'bus',
    megabytes,
    splitterMbPerS: rate(split),
    logMbPerS: rate(log),
    consoleMbPerS: rate(consoleForm),
    ratio,
    residentMb: highestMb,
    samples: large.samples,
    met: (rate(log) >= 100 || ratio >= 0.5) && highestMb < 200,
  })}\n`,
);
