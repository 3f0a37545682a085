/** Several programs on one data folder: one server, one truth; the last one to leave puts the light out. */
import { rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readPostmaster } from '../../src/jobs/embedded/postmaster-file.ts';
import { openStore } from '../../src/jobs/open-store.ts';
import { bundleWriter, startWriter } from './kill/run-writer.ts';
import { ANNA } from './samples.ts';
import { testFolder } from './test-server.ts';

let folder: string;
let bundle: string;
beforeAll(async () => {
  folder = testFolder();
  bundle = await bundleWriter(folder);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('another program sees the same jobs; a killed one leaves a server that the next joins and stops', async () => {
  const dataFolder = join(folder, 'data');
  const cluster = join(dataFolder, 'postgres');
  const here = await openStore({ dataFolder });
  const server = readPostmaster(cluster);
  const mine = await here.jobs.create(ANNA, { sections: {} });

  const other = startWriter(bundle, dataFolder, 1);
  await other.hasWritten(2);
  expect(readPostmaster(cluster)).toEqual(server);
  // The other one works on: this one leaves, the server stays.
  await here.close();
  await other.hasWritten(4);
  expect(readPostmaster(cluster)).toEqual(server);
  const told = await other.kill();

  // Nobody is there; the server has been left behind.
  expect(readPostmaster(cluster)).toEqual(server);
  const next = await openStore({ dataFolder });
  expect(readPostmaster(cluster)).toEqual(server);
  expect((await next.jobs.read(mine.id)).number).toBe(1);
  expect((await next.jobs.read(told[0]!.id)).number).toBe(2);
  await next.close();
  expect(readPostmaster(cluster)).toBeUndefined();
});

test('two that start at once make one database', async () => {
  const dataFolder = join(folder, 'at-once');
  const [one, other] = await Promise.all([openStore({ dataFolder }), openStore({ dataFolder })]);
  const job = await one.jobs.create(ANNA, { sections: {} });
  expect(await other.jobs.read(job.id)).toEqual(job);
  await Promise.all([one.close(), other.close()]);
  expect(readPostmaster(join(dataFolder, 'postgres'))).toBeUndefined();
});

test('the password is for the owner only, and the server listens on loopback alone', async () => {
  const dataFolder = join(folder, 'data');
  const store = await openStore({ dataFolder });
  expect(statSync(join(dataFolder, 'postgres', 'vaporwright-password')).mode & 0o777).toBe(0o600);
  const { rows } = await (await import('kysely')).sql<{ name: string; setting: string }>`
    select name, setting from pg_settings
    where name in ('listen_addresses', 'unix_socket_directories', 'fsync', 'full_page_writes', 'synchronous_commit', 'data_checksums')
    order by name`.execute(store.sql);
  expect(Object.fromEntries(rows.map(({ name, setting }) => [name, setting]))).toEqual({
    data_checksums: 'on',
    fsync: 'on',
    full_page_writes: 'on',
    listen_addresses: '127.0.0.1',
    synchronous_commit: 'on',
    unix_socket_directories: '',
  });
  await store.close();
});
