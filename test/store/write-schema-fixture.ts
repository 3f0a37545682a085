/** Writes `schemas/N.sql` and `schemas/N.expected.json` for the newest version of the tables; never over an older one. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openEmbedded } from '../../src/jobs/embedded/embedded.ts';
import { NEWEST_SCHEMA } from '../../src/jobs/migrations/all.ts';
import { openStore } from '../../src/jobs/open-store.ts';
import { debianPrograms } from './debian-programs.ts';
import { fillShop, readShop } from './filled-shop.ts';
import { MOMENT } from './samples.ts';

const place = (name: string) => fileURLToPath(new URL(`schemas/${name}`, import.meta.url));

/** Without the commands that only one client program knows, and the settings of one session. */
const plainSql = (dump: string): string =>
  dump
    .split('\n')
    .filter((line) => !/^(\\(un)?restrict |SET \w+ = |SELECT pg_catalog\.set_config)/.test(line))
    .join('\n');

async function main(): Promise<void> {
  const sqlFile = place(`${NEWEST_SCHEMA}.sql`);
  if (existsSync(sqlFile)) throw new Error(`${sqlFile} is there already; a released one is never written again.`);
  const programs = await debianPrograms();
  const folder = mkdtempSync(join(tmpdir(), 'vaporwright-fixture-'));
  const embedded = await openEmbedded(folder, programs);
  try {
    const { user, password, host, port } = embedded.address;
    const databaseUrl = `postgres://${user}:${password}@${host}:${port}/postgres`;
    let tick = 0;
    const now = () => new Date(Date.parse(MOMENT) + 1000 * tick++);
    const store = await openStore({ dataFolder: folder, databaseUrl, now });
    await fillShop(store);
    const expected = await readShop(store);
    await store.close();
    const dump = execFileSync(
      join(dirname(programs.postgres), 'pg_dump'),
      ['--inserts', '--no-owner', '--no-privileges', '--schema=vaporwright', databaseUrl],
      { encoding: 'utf8' },
    );
    writeFileSync(sqlFile, `${plainSql(dump)}\n`);
    writeFileSync(place(`${NEWEST_SCHEMA}.expected.json`), `${JSON.stringify(expected, null, 1)}\n`);
  } finally {
    await embedded.leave();
    rmSync(folder, { recursive: true, force: true });
  }
}

await main();
