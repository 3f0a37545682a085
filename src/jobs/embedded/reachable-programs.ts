/** As root the database runs as another user, who may not see a package installed under /root: then it gets a copy. */
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileProblem } from '../file-problem.ts';
import { type Programs, programsIn } from './programs.ts';
import type { SystemUser } from './run-program.ts';
import { barredFor } from './system-user.ts';

const COPIES = '/var/lib/vaporwright-postgres';

/** The same programs where `user` can run them. */
export function reachablePrograms(programs: Programs, user: SystemUser | undefined): Programs {
  if (user === undefined || barredFor(user, dirname(programs.postgres)) === undefined) return programs;
  const native = dirname(dirname(programs.postgres));
  const { size } = statSync(programs.postgres);
  const mark = createHash('sha256').update(`${size}`).update(readFileSync(programs.initdb)).digest('hex').slice(0, 16);
  const copy = join(COPIES, `${programs.major}-${mark}`);
  if (!existsSync(copy)) {
    const aside = `${copy}.${process.pid}`;
    try {
      mkdirSync(COPIES, { recursive: true, mode: 0o755 });
      cpSync(native, aside, { recursive: true, verbatimSymlinks: true });
      renameSync(aside, copy);
    } catch (error) {
      rmSync(aside, { recursive: true, force: true });
      if (!existsSync(copy)) throw fileProblem(error, "copying the database's programs", copy);
    }
  }
  return { ...programsIn(join(copy, basename(dirname(programs.postgres)))), major: programs.major };
}
