/** `serve`: the workbench in a browser on this machine, until Ctrl-C. */

import { join } from 'node:path';
import { DEMO_FOLDER } from '../jobs/demo/demo-shop.ts';
import { underLock } from '../jobs/embedded/folder-lock.ts';
import { StoreProblem } from '../jobs/store-problem.ts';
import { userDataFolder } from '../jobs/user-data-folder.ts';
import { answers, type Running, readRunning } from '../server/running-file.ts';
import { type RunningServer, startServer, USUAL_HOST } from '../server/start-server.ts';
import { EXIT } from './exit-codes.ts';
import { Failure, systemReason } from './failure.ts';
import { makeFolderFor } from './make-folder.ts';
import { printJson, printText, remark } from './output.ts';
import { packagePath } from './package-path.ts';
import { ownSignals } from './stop-signals.ts';
import { PROGRAM, PROGRAM_VERSION } from './version.ts';

export interface ServeOptions {
  readonly data?: string;
  readonly port?: number;
  readonly host?: string;
  readonly publicUrl?: string;
  readonly demo?: boolean;
  readonly json?: boolean;
}

export const dataFolderFrom = (given: string | undefined): string =>
  given ?? (process.env.VAPORWRIGHT_DATA || userDataFolder());

/** What the store says goes to the shell in the form of every other failure. */
export function storeFailure(error: unknown): unknown {
  if (!(error instanceof StoreProblem)) return error;
  return new Failure(EXIT.input, error.message, {
    ...(error.where === undefined ? {} : { file: error.where }),
    advice: error.advice,
  });
}

function startFailure(error: unknown, { host = USUAL_HOST, port }: ServeOptions): unknown {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const isAddress = ['EADDRINUSE', 'EADDRNOTAVAIL', 'ENOTFOUND', 'EACCES'].includes(code);
  if (!isAddress) return storeFailure(error);
  return new Failure(EXIT.input, `cannot listen on ${host}${port === undefined ? '' : `, port ${port}`}`, {
    found: code === 'EADDRINUSE' ? 'another program listens there' : systemReason(error),
    advice: 'Choose another one with --port or --host.',
  });
}

/** Where it is open, on stdout: the one thing that the command yields. */
function tellAddress(address: string, dataFolder: string, { json }: ServeOptions): void {
  if (json === true) printJson({ schema: 'vaporwright-serve-result-1', address, data: dataFolder });
  else printText(`Vaporwright is open at ${address}`);
}

function greet(
  { address, dataFolder, firstAccountUrl, needsLogin, missingFiles }: RunningServer,
  options: ServeOptions,
) {
  tellAddress(address, dataFolder, options);
  remark(`Data: ${dataFolder}`);
  if (firstAccountUrl !== undefined) {
    remark(`There is no account yet. Make the owner's with this link, once, within an hour:\n  ${firstAccountUrl}`);
  } else if (needsLogin) remark('People sign in with their account.');
  if (missingFiles > 0) {
    remark(
      `Raw files of jobs that are not in this data folder: ${missingFiles}. They lie in the data folder of the program that took them in: give that one with --data, or restore a backup.`,
    );
  }
  remark('Ctrl-C stops it.');
}

/** Resolves at the first Ctrl-C; a second one ends at once. */
const stopped = (): Promise<void> =>
  new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
      process.once(signal, () => {
        process.once(signal, () => process.exit(EXIT.cancelled));
        resolve();
      });
    }
  });

export async function serveCommand(options: ServeOptions): Promise<void> {
  ownSignals();
  const dataFolder = dataFolderFrom(options.data);
  makeFolderFor(join(dataFolder, 'database'));
  // Two that start at once: the second waits until it can see the first.
  const started = await underLock(join(dataFolder, 'serve.lock'), () => startOrFind(dataFolder, options)).catch(
    (error: unknown) => {
      throw startFailure(error, options);
    },
  );
  if ('running' in started) {
    const { address, pid } = started.running;
    tellAddress(address, dataFolder, options);
    remark(`It was started before, by process ${pid}, on the same data: ${dataFolder}`);
    return;
  }
  const { server, end } = started;
  greet(server, options);
  await end;
  remark('\nvaporwright: stopping …');
  await server.close();
}

type Started = { readonly running: Running } | { readonly server: RunningServer; readonly end: Promise<void> };

async function startOrFind(dataFolder: string, options: ServeOptions): Promise<Started> {
  const running = readRunning(dataFolder);
  if (running !== undefined && (await answers(running))) return { running };
  const end = stopped();
  const server = await startServer({
    dataFolder,
    pagesFolder: packagePath('dist/web'),
    program: PROGRAM,
    version: PROGRAM_VERSION,
    onFault: (error, where) =>
      remark(`vaporwright: fault at ${where}: ${error instanceof Error ? error.stack : error}`),
    ...(options.demo === false ? {} : { demoFolder: packagePath(DEMO_FOLDER) }),
    ...(process.env.DATABASE_URL ? { databaseUrl: process.env.DATABASE_URL } : {}),
    ...(options.host === undefined ? {} : { host: options.host }),
    ...(options.port === undefined ? {} : { port: options.port }),
    ...(options.publicUrl === undefined ? {} : { publicUrl: options.publicUrl }),
  });
  return { server, end };
}
