/** Secrets that are handed out once; only their hash is kept. */
import { createHash, randomBytes } from 'node:crypto';

export const newSecret = (): string => randomBytes(32).toString('base64url');
export const hashOf = (secret: string): string => createHash('sha256').update(secret).digest('hex');
