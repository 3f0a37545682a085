/** What can be wrong with a data folder: each is said clearly, and what is in the folder stays as it was. */
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { readPostmaster } from '../../src/jobs/embedded/postmaster-file.ts';
import { openStore } from '../../src/jobs/open-store.ts';
import type { StoreProblemCode } from '../../src/jobs/store-problem.ts';
import { treeOf } from './folder-tree.ts';
import { bundleProgram } from './kill/run-writer.ts';
import { ANNA } from './samples.ts';
import { testFolder } from './test-server.ts';

let original: string;
let jobId: string;
const folders: string[] = [];
const newFolder = (): string => {
  const folder = testFolder();
  folders.push(folder);
  return folder;
};
/** A data folder with one job in it. */
function copyOfData(): string {
  const folder = newFolder();
  // Owners and rights as well.
  execFileSync('cp', ['-a', `${original}/.`, folder]);
  return folder;
}

beforeAll(async () => {
  original = testFolder();
  const store = await openStore({ dataFolder: original });
  jobId = (await store.jobs.create(ANNA, { sections: { vehicle: { name: 'Blue estate' } } })).id;
  await store.close();
});
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});
afterAll(() => rmSync(original, { recursive: true, force: true }));

const inCluster =
  (name: string, change: (path: string) => void) =>
  (folder: string): void =>
    change(join(folder, 'postgres', name));

test.each<[string, (folder: string) => void, StoreProblemCode, RegExp]>([
  [
    'of a newer PostgreSQL',
    inCluster('PG_VERSION', (path) => writeFileSync(path, '99\n')),
    'newer-data',
    /PostgreSQL 99/,
  ],
  [
    'of an older PostgreSQL',
    inCluster('PG_VERSION', (path) => writeFileSync(path, '14\n')),
    'other-postgres',
    /PostgreSQL 14/,
  ],
  ['without PG_VERSION', inCluster('PG_VERSION', (path) => rmSync(path)), 'corrupt', /PG_VERSION/],
  ['with nonsense in PG_VERSION', inCluster('PG_VERSION', (path) => writeFileSync(path, 'x')), 'corrupt', /PG_VERSION/],
  [
    'without its password',
    inCluster('vaporwright-password', (path) => rmSync(path)),
    'corrupt',
    /vaporwright-password/,
  ],
  ['without its control file', inCluster('global/pg_control', (path) => rmSync(path)), 'corrupt', /pg_control/],
  [
    'with a damaged control file',
    inCluster('global/pg_control', (path) => writeFileSync(path, Buffer.alloc(8192, 7))),
    'corrupt',
    /control file|checksum|incompatible/,
  ],
  [
    'with a setting that is none',
    inCluster('postgresql.conf', (path) => writeFileSync(path, 'fsync = perhaps\n', { flag: 'a' })),
    'corrupt',
    /fsync/,
  ],
])('a data folder %s', async (_what, spoil, code, words) => {
  const folder = copyOfData();
  spoil(folder);
  const before = treeOf(folder);
  const thrown = await openStore({ dataFolder: folder }).catch((error: unknown) => error);
  expect(thrown).toMatchObject({ name: 'StoreProblem', code, where: join(folder, 'postgres') });
  expect((thrown as Error).message).toMatch(words);
  expect((thrown as Error & { advice: string }).advice).toMatch(/vaporwright|newer version/);
  const { 'postgres/vaporwright-server.log': _log, ...after } = treeOf(folder);
  const { 'postgres/vaporwright-server.log': _before, ...expected } = before;
  expect(after).toEqual(expected);
});

test('a file in place of the folder', async () => {
  const path = join(newFolder(), 'data');
  writeFileSync(path, 'mine');
  await expect(openStore({ dataFolder: path })).rejects.toMatchObject({ name: 'StoreProblem', code: 'corrupt' });
  expect(readFileSync(path, 'utf8')).toBe('mine');
});

test('a folder in which this user may not write', async () => {
  const folder = newFolder();
  const program = await bundleProgram(folder, 'run-as-other.ts');
  chmodSync(program, 0o644);
  chmodSync(folder, 0o755);
  const target = join(folder, 'data');
  mkdirSync(target, { mode: 0o555 });
  chmodSync(target, 0o555);
  // Root may write everywhere: then as somebody else ("nobody" on Debian).
  const as = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};
  const run = spawnSync(process.execPath, [program, target], { encoding: 'utf8', ...as });
  expect(run.stderr).toBe('');
  expect(JSON.parse(run.stdout)).toMatchObject({
    code: 'no-permission',
    message: expect.stringContaining(target),
    advice: expect.stringContaining('--data'),
  });
  expect(Object.keys(treeOf(target))).toEqual([]);
});

test('a process number in postmaster.pid that now belongs to another program', async () => {
  const folder = copyOfData();
  // This very process is no database.
  writeFileSync(join(folder, 'postgres', 'postmaster.pid'), `${process.pid}\n${folder}\n1\n1\n\n\n\nready\n`);
  const store = await openStore({ dataFolder: folder });
  expect((await store.jobs.read(jobId)).vehicle.name).toBe('Blue estate');
  await store.close();
  expect(readPostmaster(join(folder, 'postgres'))).toBeUndefined();
});

test('a folder left half made by a killed program', async () => {
  const folder = newFolder();
  mkdirSync(join(folder, 'postgres-in-making-1', 'cluster'), { recursive: true });
  writeFileSync(join(folder, 'postgres-in-making-1', 'cluster', 'PG_VERSION'), '18\n');
  const store = await openStore({ dataFolder: folder });
  expect(await store.jobs.list({})).toEqual([]);
  await store.close();
  expect(Object.keys(treeOf(folder)).filter((name) => name.includes('in-making'))).toEqual([]);
});
