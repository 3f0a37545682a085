/** The system's own PostgreSQL, as Debian installs it. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { majorOf, type Programs, programsIn } from '../../src/jobs/embedded/programs.ts';

const ROOT = '/usr/lib/postgresql';

export const SKIP = 'VAPORWRIGHT_NO_DEBIAN_POSTGRES';

/** The oldest one that is installed: the embedded one is newer already. */
export async function debianPrograms(): Promise<Programs> {
  const versions = existsSync(ROOT) ? readdirSync(ROOT).map(Number).filter(Number.isInteger) : [];
  const found = versions
    .sort((one, other) => one - other)
    .map((version) => join(ROOT, String(version), 'bin'))
    .find((bin) => existsSync(join(bin, 'initdb')));
  if (found === undefined) {
    throw new Error(
      `No PostgreSQL found under ${ROOT}. These tests need the system's own beside the one in the package. ` +
        `Run: sudo apt-get update && sudo apt-get install -y --no-install-recommends postgresql. ` +
        `To leave them out, set ${SKIP}=1; they are then reported as skipped.`,
    );
  }
  const programs = programsIn(found);
  return { ...programs, major: await majorOf(programs.postgres) };
}
