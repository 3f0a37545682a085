/** A folder for the database servers of one test run. It stays empty when no test asks for a server. */
import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const RUN_FOLDER = 'VAPORWRIGHT_TEST_RUN_FOLDER';

export default function setup(): () => Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'vaporwright-test-'));
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
