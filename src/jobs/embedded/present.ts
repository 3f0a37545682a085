/** Who has a data folder open: one small file per program, so that the last one to leave stops the server. */
import { randomUUID } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { mayBeAlive, ownIdentity, parseIdentity } from './process-identity.ts';

/** Call under the folder's lock. Returns the file that stands for this opening. */
export function signIn(folder: string): string {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, `${process.pid}-${randomUUID()}.json`);
  writeFileSync(path, JSON.stringify(ownIdentity()), { mode: 0o600 });
  return path;
}

/** Call under the folder's lock. Takes out those that have ended; returns how many are left. */
export function countPresent(folder: string): number {
  let present = 0;
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    const who = parseIdentity(readFileSync(path, 'utf8'));
    if (who !== undefined && mayBeAlive(who)) present++;
    else rmSync(path, { force: true });
  }
  return present;
}
