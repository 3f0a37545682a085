/** Paths inside the package this program was started from: its examples, fonts and scripts. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The nearest folder above this file that holds the package's own description. */
function packageRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) {
    const above = dirname(folder);
    if (above === folder) throw new Error('package.json not found above the program');
    folder = above;
  }
  return folder;
}

export const packagePath = (relative: string): string => join(packageRoot(), relative);
