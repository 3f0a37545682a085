/** Reads the faces of the report from the installed packages. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { FontBytes } from '../../report/fonts.ts';

export function loadFonts(files: Readonly<Record<keyof FontBytes, string>>): FontBytes {
  const require = createRequire(import.meta.url);
  const read = (name: keyof FontBytes): Uint8Array => readFileSync(require.resolve(files[name]));
  return { serif: read('serif'), serifStrong: read('serifStrong'), sans: read('sans'), sansStrong: read('sansStrong') };
}
