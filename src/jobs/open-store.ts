/** Opens the store: the database (embedded, or any PostgreSQL by its address) and the raw files beside it. */
import { join, resolve } from 'node:path';
import { type LoginStore, loginStore } from './accounts/logins.ts';
import { type SecurityLog, securityLog } from './accounts/security-log.ts';
import { type ShareStore, shareStore } from './accounts/shares.ts';
import { type UserStore, userStore } from './accounts/users.ts';
import { type Restored, restoreBackup } from './backup/restore-backup.ts';
import { writeBackup } from './backup/write-backup.ts';
import { connect, parseAddress, type Sql, withoutPassword } from './database/connect.ts';
import { appear, type Presence } from './database/presence.ts';
import { openEmbedded } from './embedded/embedded.ts';
import { FolderFileStore } from './files/folder-file-store.ts';
import { countMissingFiles } from './files/missing-files.ts';
import { exportJob } from './job-file/export-job.ts';
import { importJobFile } from './job-file/import-job-file.ts';
import type { Actor, FileStore, JobStore } from './job-store.ts';
import type { Job } from './record/job.ts';
import { type OpenWorkStore, openWorkStore } from './store/open-work.ts';
import { postgresJobStore } from './store/postgres-job-store.ts';
import { type SettingsStore, settingsStore } from './store/settings.ts';
import { makeContext } from './store/store-context.ts';
import { userDataFolder } from './user-data-folder.ts';

export interface StoreOptions {
  /** Default: the platform's folder for a user's data. */
  readonly dataFolder?: string;
  /** A PostgreSQL of one's own, 15 or newer; absent: the embedded one in the data folder. */
  readonly databaseUrl?: string;
  readonly now?: () => Date;
  /** Name and version as findings carry them; a finding by another one counts as outdated. */
  readonly program?: string;
}

export interface Store {
  readonly jobs: JobStore;
  readonly files: FileStore;
  readonly settings: SettingsStore;
  readonly users: UserStore;
  readonly logins: LoginStore;
  readonly shares: ShareStore;
  readonly securityLog: SecurityLog;
  readonly openWork: OpenWorkStore;
  /** How many raw files the database names and the data folder does not hold. */
  countMissingFiles(): Promise<number>;
  /** For a program that stays: its place among the others on this database; closed before the store is. */
  appear(): Promise<Presence>;
  /** One job as one file: pieces of JSON text, see `record/job-file.ts`. @throws NoSuchJob */
  exportJob(id: string): AsyncIterable<string>;
  /** `value`: the parsed JSON of such a file. @throws StoreProblem */
  importJob(actor: Actor, value: unknown): Promise<Job>;
  /** Everything as one file. An error while it is read means that it is no backup. */
  backup(): AsyncIterable<Uint8Array>;
  /** `replace`: somebody has confirmed that what is here gives way; else only an empty store (or one with demo jobs only) takes it. */
  restore(backup: AsyncIterable<Uint8Array>, options: { readonly replace: boolean }): Promise<Restored>;
  readonly sql: Sql;
  readonly dataFolder: string;
  /** Address without password, for messages. */
  readonly where: string;
  close(): Promise<void>;
}

async function openDatabase(dataFolder: string, databaseUrl: string | undefined, now: () => Date) {
  if (databaseUrl !== undefined) {
    const where = withoutPassword(parseAddress(databaseUrl));
    return connect({ connectionString: databaseUrl }, where, now);
  }
  const embedded = await openEmbedded(dataFolder);
  try {
    const database = await connect({ ...embedded.address, database: 'postgres' }, dataFolder, now);
    return {
      ...database,
      close: async () => {
        await database.close();
        await embedded.leave();
      },
    };
  } catch (error) {
    await embedded.leave();
    throw error;
  }
}

export async function openStore(options: StoreOptions = {}): Promise<Store> {
  const now = options.now ?? (() => new Date());
  const dataFolder = resolve(options.dataFolder ?? userDataFolder());
  const database = await openDatabase(dataFolder, options.databaseUrl, now);
  try {
    const files = await FolderFileStore.open(join(dataFolder, 'files'));
    const context = makeContext(database, files, now, options.program);
    const jobs = postgresJobStore(context);
    return {
      jobs,
      files,
      settings: settingsStore(context),
      users: userStore(context),
      logins: loginStore(context),
      shares: shareStore(context),
      securityLog: securityLog(context),
      openWork: openWorkStore(context),
      countMissingFiles: () => countMissingFiles(context),
      appear: () => appear(database.pool),
      exportJob: (id) => exportJob(context, jobs, id),
      importJob: (actor, value) => importJobFile(context, jobs, actor, value),
      backup: () => writeBackup({ database, files, now, program: options.program }),
      restore: (backup, how) => restoreBackup({ database, files, now }, backup, how),
      sql: database.sql,
      dataFolder,
      where: database.where,
      close: () => database.close(),
    };
  } catch (error) {
    await database.close();
    throw error;
  }
}
