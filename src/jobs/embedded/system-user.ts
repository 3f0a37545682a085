/** PostgreSQL refuses to run as root: then it runs as the system's own `postgres` user, made when absent. */
import { readFileSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { StoreProblem } from '../store-problem.ts';
import { runProgram, type SystemUser } from './run-program.ts';

const NAME = 'postgres';

function findUser(): SystemUser | undefined {
  for (const line of readFileSync('/etc/passwd', 'utf8').split('\n')) {
    const [name, , uid, gid] = line.split(':');
    if (name === NAME) return { uid: Number(uid), gid: Number(gid) };
  }
  return undefined;
}

/** undefined: this program is no root, and the database runs as the same user. */
export async function databaseUser(): Promise<SystemUser | undefined> {
  if (process.getuid?.() !== 0) return undefined;
  const found = findUser();
  if (found !== undefined) return found;
  const made = await runProgram('useradd', ['--system', '--user-group', '--no-create-home', NAME]);
  const user = findUser();
  if (user !== undefined) return user;
  throw new StoreProblem(
    'no-permission',
    `The database does not run as root, and a user "${NAME}" for it could not be made: ${made.words}`,
    { advice: `Run the program as an ordinary user, or make a system user named ${NAME}.` },
  );
}

/** The first folder on the way to `path` that `user` may not pass through. */
export function barredFor(user: SystemUser, path: string): string | undefined {
  const above: string[] = [];
  for (let folder = resolve(path); ; folder = dirname(folder)) {
    above.unshift(folder);
    if (folder === dirname(folder)) break;
  }
  return above.find((folder) => {
    const { mode, uid, gid } = statSync(folder);
    const shift = uid === user.uid ? 6 : gid === user.gid ? 3 : 0;
    return ((mode >> shift) & 1) === 0;
  });
}
