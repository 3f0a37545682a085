/** Ctrl-C at any moment: nothing is left half-written, and the program says so. */
import { rmSync } from 'node:fs';
import { EXIT } from './exit-codes.ts';
import { Failure, failureAsJson } from './failure.ts';

const STOP_SIGNALS = ['SIGINT', 'SIGTERM'] as const;

/** Temporary files that exist now; removed when the program is stopped. */
const unfinished = new Set<string>();
export const isUnfinished = (path: string): void => void unfinished.add(path);
export const isFinished = (path: string): void => void unfinished.delete(path);

let isJson = false;

function stop(): void {
  for (const path of unfinished) rmSync(path, { force: true });
  const words = 'cancelled; nothing was left half-written';
  process.stderr.write(
    isJson ? `${failureAsJson(new Failure(EXIT.cancelled, words))}\n` : `\nvaporwright: ${words}.\n`,
  );
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
