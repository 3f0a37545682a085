/** A folder for the database servers of one test run. It stays empty when no test asks for a server. */
import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const RUN_FOLDER = 'VAPORWRIGHT_TEST_RUN_FOLDER';

const PREFIX = 'vaporwright-test-';

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

/** What runs that were killed have left; a database server ends when its folder has gone. */
function clearAbandoned(): void {
  for (const name of readdirSync(tmpdir())) {
    const pid = name.startsWith(PREFIX) ? Number.parseInt(name.slice(PREFIX.length), 10) : Number.NaN;
    if (Number.isInteger(pid) && !isRunning(pid)) rmSync(join(tmpdir(), name), { recursive: true, force: true });
  }
}

export default function setup(): () => Promise<void> {
  clearAbandoned();
  const folder = mkdtempSync(join(tmpdir(), `${PREFIX}${process.pid}-`));
  // As root the database runs as another user, who must pass through.
  chmodSync(folder, 0o711);
  process.env[RUN_FOLDER] = folder;
  return async () => {
    const { stopRunning } = await import('../../src/jobs/embedded/embedded.ts');
    for (const name of readdirSync(folder)) {
      if (existsSync(join(folder, name, 'postgres'))) await stopRunning(join(folder, name));
    }
    rmSync(folder, { recursive: true, force: true });
  };
}
