/** Builds the pages into dist/web, each file packed beside itself for browsers that take it so. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';

const PACKABLE = /\.(js|css|html|svg|json|webmanifest|txt)$/;
/** Below this the head of an answer weighs more than what is saved. */
const WORTH_PACKING_BYTES = 1024;

function packAll(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) packAll(path);
    else if (PACKABLE.test(entry.name)) {
      const bytes = readFileSync(path);
      if (bytes.length < WORTH_PACKING_BYTES) continue;
      writeFileSync(`${path}.gz`, gzipSync(bytes, { level: 9 }));
      const params = { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length };
      writeFileSync(`${path}.br`, brotliCompressSync(bytes, { params }));
    }
  }
}

export async function buildPages(root, outDir) {
  const { build } = await import('vite');
  const file = join(root, 'vite.config.ts');
  await build({ configFile: file, logLevel: 'warn', build: { outDir, emptyOutDir: true } });
  packAll(outDir);
}
