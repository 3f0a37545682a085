/** Bundles src/cli into dist/, one chunk per command, so that help does not load what it does not need. */
import { existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';

export async function bundle(root) {
  const { build } = await import('esbuild');
  // Built aside and moved into place, so that a program that starts meanwhile finds the old one or the new one.
  const aside = join(root, `.dist-${process.pid}`);
  await build({
    absWorkingDir: root,
    // Worker threads start from a file of their own, beside the chunks.
    entryPoints: {
      vaporwright: 'src/cli/main.ts',
      worker: 'src/server/work/worker.ts',
      thread: 'src/cli/thread-worker.ts',
    },
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
  const dist = join(root, 'dist');
  // The pages are built by their own step and stay.
  if (existsSync(join(dist, 'web'))) renameSync(join(dist, 'web'), join(aside, 'web'));
  rmSync(dist, { recursive: true, force: true });
  renameSync(aside, dist);
}
