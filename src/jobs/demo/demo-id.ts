/** Ids that are the same on every machine: the demo shop is made the same way everywhere. */
import { createHash } from 'node:crypto';

/** A name-based UUID in the form of RFC 9562 version 8 (its bits are ours to choose). */
export function demoId(name: string): string {
  const hex = createHash('sha256').update(`vaporwright demo shop: ${name}`).digest('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), `8${hex.slice(13, 16)}`, `a${hex.slice(17, 20)}`, hex.slice(20, 32)].join(
    '-',
  );
}
