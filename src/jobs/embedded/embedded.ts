/** The embedded database of a data folder: everything outside this folder sees only this. */
import { chmodSync, mkdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileProblem } from '../file-problem.ts';
import { StoreProblem } from '../store-problem.ts';
import { clusterMajor, makeCluster } from './cluster.ts';
import { underLock } from './folder-lock.ts';
import { countPresent, signIn } from './present.ts';
import { type Programs, shippedPrograms } from './programs.ts';
import { reachablePrograms } from './reachable-programs.ts';
import type { SystemUser } from './run-program.ts';
import { type ServerAddress, type ServerPlace, startOrAttach, stopServer } from './server.ts';
import { barredFor, databaseUser } from './system-user.ts';

export interface EmbeddedDatabase {
  readonly address: ServerAddress;
  /** Leaves; the last program to leave stops the server. */
  leave(): Promise<void>;
}

function makeFolder(folder: string, user: SystemUser | undefined): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    // As root the database runs as another user, who must pass through.
    if (user !== undefined) chmodSync(folder, 0o711);
  } catch (error) {
    throw fileProblem(error, 'making the data folder', folder);
  }
  const barred = user === undefined ? undefined : barredFor(user, folder);
  if (barred === undefined) return;
  throw new StoreProblem(
    'no-permission',
    `As root the database runs as the user "postgres", who may not pass through ${barred} to the data folder ${folder}.`,
    {
      where: barred,
      advice: 'Choose a data folder elsewhere (--data /var/lib/vaporwright), or run as an ordinary user.',
    },
  );
}

function checkMajor(found: number, programs: Programs, cluster: string): void {
  if (found === programs.major) return;
  const newer = found > programs.major;
  throw new StoreProblem(
    newer ? 'newer-data' : 'other-postgres',
    `The data folder was made by PostgreSQL ${found}; this program carries PostgreSQL ${programs.major} and cannot read its files (${cluster}). It was left as it is.`,
    {
      where: cluster,
      advice: newer
        ? 'Use the newer version of this program that made the folder.'
        : 'With the version of this program that you used before: vaporwright backup FILE. Then with this one: vaporwright restore FILE --data NEW-FOLDER.',
    },
  );
}

/** Makes the database when there is none, starts its server or joins the one that runs. */
export async function openEmbedded(dataFolder: string, given?: Programs): Promise<EmbeddedDatabase> {
  const folder = resolve(dataFolder);
  const user = await databaseUser();
  makeFolder(folder, user);
  const programs = reachablePrograms(given ?? shippedPrograms(), user);
  const cluster = join(folder, 'postgres');
  const place: ServerPlace = { cluster, programs, user };
  const present = join(folder, 'open');
  const lock = join(folder, 'lock');

  return underLock(lock, async () => {
    const major = clusterMajor(cluster);
    if (major === undefined) await makeCluster(folder, cluster, programs, user);
    else checkMajor(major, programs, cluster);
    let own: string;
    try {
      own = signIn(present);
    } catch (error) {
      throw fileProblem(error, 'opening the data folder', present);
    }
    try {
      const address = await startOrAttach(place);
      return {
        address,
        leave: async () => {
          // First of all: it makes the room that the lock file needs when the disk is full.
          rmSync(own, { force: true });
          await underLock(lock, async () => {
            if (countPresent(present) === 0) await stopServer(place);
          });
        },
      };
    } catch (error) {
      rmSync(own, { force: true });
      throw error;
    }
  });
}

/** Stops a server that killed programs have left, when nobody has the folder open. */
export async function stopRunning(dataFolder: string, given?: Programs): Promise<void> {
  const folder = resolve(dataFolder);
  const user = await databaseUser();
  const programs = reachablePrograms(given ?? shippedPrograms(), user);
  await underLock(join(folder, 'lock'), async () => {
    if (countPresent(join(folder, 'open')) === 0) {
      await stopServer({ cluster: join(folder, 'postgres'), programs, user });
    }
  });
}
