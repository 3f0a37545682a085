/** `server.json` in the data folder: which server runs on it, for other programs of the same user. */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

const runningSchema = z.object({ address: z.url(), pid: z.int().positive(), startedAt: z.iso.datetime() });
export type Running = z.infer<typeof runningSchema>;

const pathIn = (dataFolder: string): string => join(dataFolder, 'server.json');

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** undefined: none runs, or the file is of one that was killed. */
export function readRunning(dataFolder: string): Running | undefined {
  try {
    const running = runningSchema.parse(JSON.parse(readFileSync(pathIn(dataFolder), 'utf8')));
    return isAlive(running.pid) ? running : undefined;
  } catch {
    return undefined;
  }
}

/** A process id may have gone to another program: only an answer of ours counts. */
export async function answers({ address }: Running): Promise<boolean> {
  try {
    const answer = await fetch(`${address}/api/v1/session`, { signal: AbortSignal.timeout(3000) });
    return answer.ok && 'csrf' in ((await answer.json()) as object);
  } catch {
    return false;
  }
}

export function writeRunning(dataFolder: string, address: string): () => void {
  const running: Running = { address, pid: process.pid, startedAt: new Date().toISOString() };
  writeFileSync(pathIn(dataFolder), `${JSON.stringify(running)}\n`, { mode: 0o600 });
  return () => {
    if (readRunning(dataFolder)?.pid === process.pid) rmSync(pathIn(dataFolder), { force: true });
  };
}
