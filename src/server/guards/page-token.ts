/** The token that a page sends with every change: proof that it could read an answer of this server in this session. */
import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const KEY_BYTES = 32;

/** Kept in the data folder, so that open pages outlive a restart of the server. */
export function loadTokenKey(dataFolder: string): Buffer {
  const path = join(dataFolder, 'token.key');
  try {
    const kept = readFileSync(path);
    if (kept.length === KEY_BYTES) return kept;
  } catch {
    // Not there yet.
  }
  const fresh = randomBytes(KEY_BYTES);
  writeFileSync(path, fresh, { mode: 0o600 });
  chmodSync(path, 0o600);
  return fresh;
}

export const pageToken = (key: Buffer, sessionToken: string): string =>
  createHmac('sha256', key).update(sessionToken).digest('base64url');

export function isPageToken(key: Buffer, sessionToken: string, given: unknown): boolean {
  if (typeof given !== 'string') return false;
  const right = Buffer.from(pageToken(key, sessionToken));
  const found = Buffer.from(given);
  return right.length === found.length && timingSafeEqual(right, found);
}
