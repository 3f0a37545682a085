/** Bundles src/cli into dist/, one chunk per command, so that help does not load what it does not need. */
import { renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';

export async function bundle(root) {
  const { build } = await import('esbuild');
  // Built aside and moved into place, so that a program that starts meanwhile finds the old one or the new one.
  const aside = join(root, `.dist-${process.pid}`);
  await build({
    absWorkingDir: root,
    entryPoints: { vaporwright: 'src/cli/main.ts' },
    outdir: aside,
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
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  renameSync(aside, join(root, 'dist'));
}
