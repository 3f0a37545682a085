/** Builds the pages into a folder; each file is packed beside itself by the build's own configuration. */
import { join } from 'node:path';

export async function buildPages(root, outDir) {
  const { build } = await import('vite');
  await build({ configFile: join(root, 'vite.config.ts'), logLevel: 'warn', build: { outDir, emptyOutDir: true } });
}
