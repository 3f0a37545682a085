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
  const old = join(root, `.dist-old-${process.pid}`);
  try {
    if (existsSync(dist)) renameSync(dist, old);
    // The pages are built by their own step and stay.
    if (existsSync(join(old, 'web'))) renameSync(join(old, 'web'), join(aside, 'web'));
    renameSync(aside, dist);
  } catch (error) {
    // Two programs that start at once both bundle the same sources: the other's is in place, only the pages may be ours.
    if (!existsSync(join(dist, 'vaporwright.mjs'))) throw error;
    const pages = join(aside, 'web');
    if (existsSync(pages) && !existsSync(join(dist, 'web'))) renameSync(pages, join(dist, 'web'));
  } finally {
    for (const rest of [aside, old]) rmSync(rest, { recursive: true, force: true });
  }
}
