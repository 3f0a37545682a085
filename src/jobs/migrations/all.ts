/** Every change of the tables, in order. Forward only: a released one is never edited; a change is a new number. */
import { jobs } from './0001-jobs.ts';
import { accounts } from './0002-accounts.ts';
import { settingsAndWork } from './0003-settings-and-work.ts';

export interface Migration {
  readonly version: number;
  readonly name: string;
  readonly sql: string;
}

export const MIGRATIONS: readonly Migration[] = [
  { version: 1, name: 'jobs', sql: jobs },
  { version: 2, name: 'accounts', sql: accounts },
  { version: 3, name: 'settings and work', sql: settingsAndWork },
];

export const NEWEST_SCHEMA = MIGRATIONS.at(-1)!.version;
