/** What a store must do, whatever PostgreSQL is under it. Run by `embedded.test.ts` and `debian.test.ts`. */
import { afterAll, afterEach, beforeAll, describe } from 'vitest';
import type { Programs } from '../../src/jobs/embedded/programs.ts';
import { accountsContract } from './contract/accounts.ts';
import { backupContract } from './contract/backup.ts';
import { changesContract } from './contract/changes.ts';
import { demoContract } from './contract/demo.ts';
import { filesContract } from './contract/files.ts';
import { findingsContract } from './contract/findings.ts';
import { jobFileContract } from './contract/job-file.ts';
import { listContract } from './contract/list.ts';
import { settingsContract } from './contract/settings.ts';
import { undoContract } from './contract/undo.ts';
import { type TestServer, testServer } from './test-server.ts';

export type GetServer = () => TestServer;

/** `programs` absent: the PostgreSQL of the package. */
export function storeContract(name: string, programs?: () => Promise<Programs>): void {
  describe(name, () => {
    let server: TestServer | undefined;
    beforeAll(async () => {
      server = await testServer(await programs?.());
    });
    afterEach(() => server?.afterTest());
    afterAll(() => server?.leave());
    const get: GetServer = () => server!;
    describe('changes', () => changesContract(get));
    describe('undo', () => undoContract(get));
    describe('list', () => listContract(get));
    describe('findings', () => findingsContract(get));
    describe('raw files', () => filesContract(get));
    describe('demo jobs', () => demoContract(get));
    describe('job file', () => jobFileContract(get));
    describe('backup', () => backupContract(get));
    describe('accounts', () => accountsContract(get));
    describe('settings', () => settingsContract(get));
  });
}
