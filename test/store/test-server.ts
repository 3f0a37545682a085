/** One server per run; each test has databases of its own, copied from a migrated template and emptied after use. */
import { chmodSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { sql } from 'kysely';
import pg from 'pg';
import { BACKED_UP, OF_THE_MOMENT } from '../../src/jobs/backup/backup-format.ts';
import { BEFORE } from '../../src/jobs/backup/side-schema.ts';
import { connect } from '../../src/jobs/database/connect.ts';
import { openEmbedded } from '../../src/jobs/embedded/embedded.ts';
import type { Programs } from '../../src/jobs/embedded/programs.ts';
import { openStore, type Store, type StoreOptions } from '../../src/jobs/open-store.ts';
import { RUN_FOLDER } from './global-setup.ts';

export interface TestServer {
  /** An empty database. */
  emptyDatabase(): Promise<string>;
  /** A database with the newest tables. */
  freshDatabase(): Promise<string>;
  /** A store with nothing in it, for one test. */
  freshStore(options?: Omit<StoreOptions, 'databaseUrl'>): Promise<Store>;
  /** A folder for one test. */
  folder(): string;
  /** Closes and empties what the test has used. */
  afterTest(): Promise<void>;
  leave(): Promise<void>;
}

function runFolder(): string {
  const folder = process.env[RUN_FOLDER];
  if (folder === undefined) throw new Error('test/store/global-setup.ts is not set up in vitest.config.ts');
  return folder;
}

/** A folder of its own under the run's folder, which the database's user may pass through. */
export function testFolder(): string {
  const folder = mkdtempSync(join(runFolder(), 'folder-'));
  chmodSync(folder, 0o711);
  return folder;
}

/** `programs` absent: those of the package. */
export async function testServer(programs?: Programs): Promise<TestServer> {
  const place = join(runFolder(), programs === undefined ? 'embedded' : `system-${programs.major}`);
  mkdirSync(place, { recursive: true });
  const embedded = await openEmbedded(place, programs);
  const { user, password, host, port } = embedded.address;
  const urlOf = (database: string) => `postgres://${user}:${password}@${host}:${port}/${database}`;
  const admin = new pg.Client({ ...embedded.address, database: 'postgres' });
  await admin.connect();
  // Nothing that these tests look at depends on it, and a database per test costs much less.
  await admin.query('alter system set fsync = off');
  await admin.query('select pg_reload_conf()');

  const databases: string[] = [];
  const folders: string[] = [];
  const stores: { readonly store: Store; readonly database: string }[] = [];
  /** Emptied and ready for the next test. */
  const ready: string[] = [];
  const newName = (what: string): string => {
    const name = `${what}_${process.pid}_${databases.length}`;
    databases.push(name);
    return name;
  };
  const emptyDatabase = async (): Promise<string> => {
    const name = newName('empty');
    await admin.query(`create database ${name}`);
    return urlOf(name);
  };
  const template = newName('template');
  await admin.query(`create database ${template}`);
  await migrateTemplate(urlOf(template), admin, template);
  const takeDatabase = async (): Promise<string> => {
    const emptied = ready.pop();
    if (emptied !== undefined) return emptied;
    const name = newName('test');
    await admin.query(`create database ${name} template ${template}`);
    return name;
  };
  const folder = (): string => {
    const made = testFolder();
    folders.push(made);
    return made;
  };

  return {
    emptyDatabase,
    freshDatabase: async () => urlOf(await takeDatabase()),
    folder,
    freshStore: async (options = {}) => {
      const database = await takeDatabase();
      const store = await openStore({ dataFolder: folder(), ...options, databaseUrl: urlOf(database) });
      stores.push({ store, database });
      return store;
    },
    afterTest: async () => {
      for (const { store, database } of stores.splice(0)) {
        await emptyTables(store);
        await store.close();
        ready.push(database);
      }
      for (const made of folders.splice(0)) rmSync(made, { recursive: true, force: true });
    },
    leave: async () => {
      for (const { store } of stores) await store.close();
      for (const made of folders) rmSync(made, { recursive: true, force: true });
      for (const name of databases) await admin.query(`drop database if exists ${name} with (force)`);
      await admin.end();
      await embedded.leave();
    },
  };
}

async function migrateTemplate(url: string, admin: pg.Client, template: string): Promise<void> {
  const migrated = await connect({ connectionString: url }, 'the template', () => new Date());
  await migrated.close();
  // A connection ends a moment after it was closed, and nobody may be connected to what is copied.
  await admin.query(`alter database ${template} allow_connections false`);
  for (let others = 1; others > 0; ) {
    const { rows } = await admin.query('select pg_terminate_backend(pid) from pg_stat_activity where datname = $1', [
      template,
    ]);
    others = rows.length;
  }
}

/** As the migrations leave them. Much quicker than a new copy of the template, and none is left to clear away. */
async function emptyTables({ sql: db }: Store): Promise<void> {
  const tables = [...BACKED_UP, ...OF_THE_MOMENT];
  await sql`drop schema if exists ${sql.id(BEFORE)} cascade`.execute(db);
  await sql`truncate ${sql.join(tables.map((table) => sql.table(table)))} restart identity`.execute(db);
  await sql`insert into counters (name, value) values ('job', 0)`.execute(db);
}
