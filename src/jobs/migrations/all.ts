/** Every change of the tables, in order. Forward only: a released one is never edited; a change is a new number. */
import { jobs } from './0001-jobs.ts';
import { accounts } from './0002-accounts.ts';
import { settings } from './0003-settings.ts';
import { monitor } from './0004-monitor.ts';
import { openWork } from './0005-open-work.ts';

export interface Migration {
  readonly version: number;
  readonly name: string;
  readonly sql: string;
}

export const MIGRATIONS: readonly Migration[] = [
  { version: 1, name: 'jobs', sql: jobs },
  { version: 2, name: 'accounts', sql: accounts },
  { version: 3, name: 'settings', sql: settings },
  { version: 4, name: 'monitor', sql: monitor },
  { version: 5, name: 'open-work', sql: openWork },
];

export const NEWEST_SCHEMA = MIGRATIONS.at(-1)!.version;
