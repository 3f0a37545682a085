/** A lock file: one program at a time looks after the database server of a data folder. */
import { randomUUID } from 'node:crypto';
import { linkSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { fileProblem, systemCode } from '../file-problem.ts';
import { StoreProblem } from '../store-problem.ts';
import { mayBeAlive, ownIdentity, parseIdentity } from './process-identity.ts';

const PATIENCE_MS = 90_000;
const LOOK_AGAIN_MS = 20;
/** A lock whose holder died between making the file and writing into it. */
const EMPTY_IS_STALE_MS = 5_000;

function readLock(path: string): { readonly text: string; readonly stale: boolean } | undefined {
  try {
    const text = readFileSync(path, 'utf8');
    const holder = parseIdentity(text);
    const stale = holder === undefined ? Date.now() - statSync(path).mtimeMs > EMPTY_IS_STALE_MS : !mayBeAlive(holder);
    return { text, stale };
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return undefined;
    throw error;
  }
}

/** Takes away a dead holder's lock; a living one that came in between is put back. */
function takeAway(path: string, staleText: string): void {
  const aside = `${path}.${randomUUID()}`;
  try {
    renameSync(path, aside);
    if (readFileSync(aside, 'utf8') !== staleText) linkSync(aside, path);
  } catch (error) {
    if (!['ENOENT', 'EEXIST'].includes(systemCode(error) ?? '')) throw error;
  } finally {
    rmSync(aside, { force: true });
  }
}

function tryLock(path: string, text: string): boolean {
  try {
    writeFileSync(path, text, { flag: 'wx', mode: 0o600 });
    return true;
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return false;
    // Made but not filled: it must not stand in the way of others.
    if (systemCode(error) === 'ENOSPC') rmSync(path, { force: true });
    throw fileProblem(error, 'making the lock file', path);
  }
}

/** Runs `work` while no other program on this machine runs its own under the same lock. */
export async function underLock<T>(path: string, work: () => Promise<T>, patienceMs = PATIENCE_MS): Promise<T> {
  const text = JSON.stringify({ ...ownIdentity(), token: randomUUID() });
  const givenUpAt = Date.now() + patienceMs;
  while (!tryLock(path, text)) {
    const found = readLock(path);
    if (found?.stale) takeAway(path, found.text);
    else if (Date.now() > givenUpAt) {
      const holder = parseIdentity(found?.text ?? '');
      throw new StoreProblem(
        'in-use',
        `Another program holds the data folder (process ${holder?.pid ?? '?'} on ${holder?.host ?? 'this machine'}; lock file ${path}).`,
        { where: path, advice: 'Wait until it has ended. If that process is not ours any more, remove the lock file.' },
      );
    } else await pause(LOOK_AGAIN_MS);
  }
  try {
    return await work();
  } finally {
    if (readLock(path)?.text === text) rmSync(path, { force: true });
  }
}
