/** Builds the pages into a folder; each file is packed beside itself by the build's own configuration. */
import { join } from 'node:path';

export async function buildPages(root, outDir) {
  const { build } = await import('vite');
  // What a caller has set (a test runner says "test") would build the pages' slow, talkative development form.
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await build({ configFile: join(root, 'vite.config.ts'), logLevel: 'warn', build: { outDir, emptyOutDir: true } });
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
  }
}
