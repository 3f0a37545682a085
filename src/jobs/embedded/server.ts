/** Starts, finds and stops the database server of a cluster. All under the data folder's lock. */
import { existsSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { StoreProblem } from '../store-problem.ts';
import { corrupt, DATABASE_ROLE, readPassword } from './cluster.ts';
import { type Postmaster, postmasterPath, readPostmaster } from './postmaster-file.ts';
import type { Programs } from './programs.ts';
import { runProgram, type SystemUser } from './run-program.ts';

const START_TRIES = 25;
const ATTACH_PATIENCE_MS = 60_000;
const LOG_LIMIT_BYTES = 4_000_000;

export interface ServerAddress {
  readonly host: '127.0.0.1';
  readonly port: number;
  readonly user: string;
  readonly password: string;
}

export interface ServerPlace {
  readonly cluster: string;
  readonly programs: Programs;
  readonly user: SystemUser | undefined;
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

const addressOf = (cluster: string, port: number): ServerAddress => ({
  host: '127.0.0.1',
  port,
  user: DATABASE_ROLE,
  password: readPassword(cluster),
});

/** True: a server answers there, takes our password and serves this very folder. */
async function answers(cluster: string, port: number): Promise<boolean> {
  const client = new pg.Client({
    ...addressOf(cluster, port),
    database: 'postgres',
    connectionTimeoutMillis: 5_000,
  });
  client.on('error', () => undefined);
  try {
    await client.connect();
    const { rows } = await client.query<{ data_directory: string }>('SHOW data_directory');
    const served = rows[0]?.data_directory;
    return served !== undefined && statSync(served).ino === statSync(cluster).ino;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => undefined);
  }
}

/** Waits for a server left by a killed program, or one that is still recovering. */
async function attach(cluster: string, found: Postmaster): Promise<ServerAddress | undefined> {
  const givenUpAt = Date.now() + ATTACH_PATIENCE_MS;
  while (Date.now() < givenUpAt) {
    if (await answers(cluster, found.port)) return addressOf(cluster, found.port);
    if (readPostmaster(cluster)?.pid !== found.pid) return undefined;
    await pause(100);
  }
  throw new StoreProblem(
    'no-answer',
    `A database server (process ${found.pid}, port ${found.port}) belongs to ${cluster} but does not answer.`,
    { where: cluster, advice: `See ${logPath(cluster)}, or end that process, then start again.` },
  );
}

const logPath = (cluster: string) => join(cluster, 'vaporwright-server.log');

function lastWords(cluster: string): string {
  const path = logPath(cluster);
  if (!existsSync(path)) return '';
  return readFileSync(path, 'utf8').trimEnd().split('\n').slice(-12).join('\n');
}

export async function startOrAttach(place: ServerPlace): Promise<ServerAddress> {
  const { cluster, programs, user } = place;
  const log = logPath(cluster);
  let words = '';
  // Before anything is started: without it nobody could use the server.
  readPassword(cluster);
  for (let count = 0; count < START_TRIES; count++) {
    const found = readPostmaster(cluster);
    const attached = found === undefined ? undefined : await attach(cluster, found);
    if (attached !== undefined) return attached;
    // Its process has ended or is no database: the file would only mislead the server.
    rmSync(postmasterPath(cluster), { force: true });
    if (existsSync(log) && statSync(log).size > LOG_LIMIT_BYTES) renameSync(log, `${log}.1`);
    const port = await freePort();
    const started = await runProgram(
      programs.pgCtl,
      ['start', '-D', cluster, '-l', log, '-w', '-t', '60', '-s', '-o', `-p ${port}`],
      { as: user, cwd: cluster },
    );
    if (started.code === 0 && (await answers(cluster, port))) return addressOf(cluster, port);
    if (started.code === 0) await stopServer(place);
    words = started.code === null ? started.words : lastWords(cluster);
    // Processes of a killed server take a moment to go; a port may have been taken meanwhile.
    if (!/still in use|could not bind|Address already in use|another postmaster|is another/i.test(words)) break;
    await pause(200);
  }
  throw startProblem(cluster, words);
}

function startProblem(cluster: string, words: string): StoreProblem {
  if (/No space left on device/.test(words)) {
    return new StoreProblem('disk-full', `The disk is full: the database in ${cluster} could not start.`, {
      where: cluster,
      advice: 'Make room on this disk, then start again.',
    });
  }
  if (/Read-only file system/.test(words)) {
    return new StoreProblem('read-only', `The disk is read-only: the database in ${cluster} could not start.`, {
      where: cluster,
      advice: 'Make the disk writable, or choose another folder with --data.',
    });
  }
  return corrupt(cluster, `its database does not start. Its last words:\n${words}\n`);
}

export async function stopServer(place: ServerPlace): Promise<void> {
  if (readPostmaster(place.cluster) === undefined) return;
  await runProgram(place.programs.pgCtl, ['stop', '-D', place.cluster, '-m', 'fast', '-w', '-t', '60', '-s'], {
    as: place.user,
    cwd: place.cluster,
  });
}
