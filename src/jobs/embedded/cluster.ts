/** The database's own folder: made aside and renamed into place, so that it is whole or not there. */
import { randomBytes } from 'node:crypto';
import {
  appendFileSync,
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileProblem, systemCode } from '../file-problem.ts';
import { StoreProblem } from '../store-problem.ts';
import type { Programs } from './programs.ts';
import { runProgram, type SystemUser } from './run-program.ts';

export const DATABASE_ROLE = 'vaporwright';
const PASSWORD_FILE = 'vaporwright-password';
const ASIDE = 'postgres-in-making-';

const SETTINGS = `
# Set by vaporwright. Loopback only; the port is chosen at each start.
listen_addresses = '127.0.0.1'
unix_socket_directories = ''
max_connections = 100
shared_buffers = 64MB
log_line_prefix = '%m [%p] '
`;

export async function makeCluster(
  dataFolder: string,
  cluster: string,
  programs: Programs,
  user: SystemUser | undefined,
): Promise<void> {
  for (const name of readdirSync(dataFolder)) {
    if (name.startsWith(ASIDE)) await removeLeftover(join(dataFolder, name));
  }
  const aside = join(dataFolder, `${ASIDE}${process.pid}`);
  const inMaking = join(aside, 'cluster');
  const passwordFile = join(aside, 'password');
  const give = (path: string) => {
    if (user !== undefined) chownSync(path, user.uid, user.gid);
  };
  try {
    mkdirSync(aside, { mode: 0o700 });
    give(aside);
    writeFileSync(passwordFile, randomBytes(24).toString('base64url'), { mode: 0o600 });
    give(passwordFile);
    const made = await runProgram(
      programs.initdb,
      [
        `--pgdata=${inMaking}`,
        `--username=${DATABASE_ROLE}`,
        `--pwfile=${passwordFile}`,
        '--auth=scram-sha-256',
        '--encoding=UTF8',
        '--locale=C',
        '--data-checksums',
      ],
      { as: user, cwd: aside },
    );
    if (made.code !== 0) throw initProblem(made.words, dataFolder);
    appendFileSync(join(inMaking, 'postgresql.conf'), SETTINGS);
    const kept = join(inMaking, PASSWORD_FILE);
    writeFileSync(kept, readFileSync(passwordFile), { mode: 0o600 });
    chmodSync(kept, 0o600);
    renameSync(inMaking, cluster);
  } catch (error) {
    throw fileProblem(error, 'making the database', dataFolder);
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}

/** How often, and how long apart [ms], a folder is tried that somebody still writes to. */
const MOST_TRIES = 50;
const BETWEEN_MS = 100;

/** What a killed program left half made. Its initdb may outlive it for a moment and go on writing there. */
async function removeLeftover(folder: string): Promise<void> {
  for (let tried = 1; ; tried++) {
    try {
      rmSync(folder, { recursive: true, force: true });
      return;
    } catch (error) {
      if (systemCode(error) !== 'ENOTEMPTY' || tried >= MOST_TRIES)
        throw fileProblem(error, 'making the database', folder);
      await setTimeout(BETWEEN_MS);
    }
  }
}

function initProblem(words: string, dataFolder: string): Error {
  if (/No space left on device/.test(words)) {
    return new StoreProblem('disk-full', `The disk is full: the database could not be made in ${dataFolder}.`, {
      where: dataFolder,
      advice: 'Make room on this disk (an empty database takes about 50 MB), then start again.',
    });
  }
  return new StoreProblem('failed', `The database could not be made in ${dataFolder}: ${words}`, {
    where: dataFolder,
    advice: 'See the words of the database above.',
  });
}

/** Major version of the PostgreSQL that made the folder; undefined: there is none yet. */
export function clusterMajor(cluster: string): number | undefined {
  if (!existsSync(cluster) || readdirSync(cluster).length === 0) return undefined;
  const file = join(cluster, 'PG_VERSION');
  const major = existsSync(file) ? Number.parseInt(readFileSync(file, 'utf8'), 10) : Number.NaN;
  if (Number.isInteger(major)) return major;
  throw corrupt(cluster, 'its file PG_VERSION is missing or unreadable');
}

export function readPassword(cluster: string): string {
  const file = join(cluster, PASSWORD_FILE);
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw fileProblem(error, 'reading the password', file);
    throw corrupt(cluster, `the file ${PASSWORD_FILE} is missing`);
  }
}

export function corrupt(cluster: string, what: string): StoreProblem {
  return new StoreProblem('corrupt', `The data folder is damaged: ${what} (${cluster}). It was left as it is.`, {
    where: cluster,
    advice:
      'Keep a copy of the folder. Restore your newest backup into a new folder: vaporwright restore FILE --data NEW.',
  });
}
