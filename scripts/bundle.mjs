/** Bundles src/cli into dist/, one chunk per command, so that help does not load what it does not need. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';

export async function bundle(root) {
  const { build } = await import('esbuild');
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  await build({
    absWorkingDir: root,
    entryPoints: { vaporwright: 'src/cli/main.ts' },
    outdir: 'dist',
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    sourcemap: true,
    logLevel: 'warning',
  });
}
