/** Ctrl-C at any moment: nothing is left half-written, and the program says so. */
import { rmSync } from 'node:fs';
import { EXIT } from './exit-codes.ts';
import { Failure, failureAsJson } from './failure.ts';

const STOP_SIGNALS = ['SIGINT', 'SIGTERM'] as const;

/** Temporary files that exist now; removed when the program is stopped. */
const unfinished = new Set<string>();
export const isUnfinished = (path: string): void => void unfinished.add(path);
export const isFinished = (path: string): void => void unfinished.delete(path);

/** Reads that may wait for ever: of a pipe whose writer does not come. */
let waiting = 0;

/** Runs a read of what may be a pipe. */
export async function readingWhatMayWait<T>(read: () => Promise<T>): Promise<T> {
  waiting++;
  try {
    return await read();
  } finally {
    waiting--;
  }
}

let isJson = false;

function stop(signal: NodeJS.Signals): void {
  for (const path of unfinished) rmSync(path, { force: true });
  const words = 'cancelled; nothing was left half-written';
  process.stderr.write(
    isJson ? `${failureAsJson(new Failure(EXIT.cancelled, words))}\n` : `\nvaporwright: ${words}.\n`,
  );
  // an exit would wait for a thread that waits for the pipe: end by the signal, which shells tell as the same 130
  if (waiting > 0) {
    for (const each of STOP_SIGNALS) process.removeAllListeners(each);
    process.kill(process.pid, signal);
    return;
  }
  process.exit(EXIT.cancelled);
}

export function stopOnSignals(json: boolean): void {
  isJson = json;
  for (const signal of STOP_SIGNALS) process.on(signal, stop);
}

/** For commands that end in a way of their own, as a recording that Ctrl-C ends properly. */
export function ownSignals(): void {
  for (const signal of STOP_SIGNALS) process.off(signal, stop);
}
