/** Opens everything that the routes work with, and closes it in the right order. */
import { join } from 'node:path';
import type { Presence } from '../jobs/database/presence.ts';
import { openStore, type Store } from '../jobs/open-store.ts';
import { Doorkeeper } from './access/doorkeeper.ts';
import { People } from './access/people.ts';
import type { HostRules } from './guards/host-guard.ts';
import { loadTokenKey } from './guards/page-token.ts';
import { LiveBoard } from './live/live-board.ts';
import type { Parts } from './parts.ts';
import { Readings } from './recordings/readings.ts';
import { readSettings } from './routes/settings-routes.ts';
import { Bell } from './work/bell.ts';
import { Neighbours } from './work/neighbours.ts';
import { WorkBoard } from './work/work-board.ts';
import { WorkMarks } from './work/work-marks.ts';
import { Workshop } from './work/workshop.ts';

export interface PartsOptions {
  readonly dataFolder?: string;
  readonly databaseUrl?: string;
  readonly program: string;
  readonly hosts: HostRules;
  readonly isSecure?: boolean;
  readonly publicAddress: () => string;
  /** Worker threads for long work; a default by the machine. */
  readonly threads?: number;
}

export interface OpenParts extends Parts {
  close(): Promise<void>;
}

/** Who works at a bench where nobody signs in. */
const LOCAL_NAME = 'workbench';

export async function openParts(options: PartsOptions): Promise<OpenParts> {
  const { program, hosts, isSecure = false, publicAddress, threads } = options;
  const store: Store = await openStore({
    program,
    ...(options.dataFolder === undefined ? {} : { dataFolder: options.dataFolder }),
    ...(options.databaseUrl === undefined ? {} : { databaseUrl: options.databaseUrl }),
  });
  const workshop = new Workshop(threads);
  const live = new LiveBoard(join(store.dataFolder, 'live'), workshop);
  let board: WorkBoard | undefined;
  let presence: Presence | undefined;
  const close = async () => {
    await board?.close();
    await live.close();
    await workshop.close();
    await presence?.close();
    await store.close();
  };
  try {
    presence = await store.appear();
    const neighbours = new Neighbours(presence);
    const bell = new Bell(neighbours);
    board = new WorkBoard(bell, new WorkMarks(store.openWork, presence), neighbours);
    const { users, logins } = store;
    const people = await People.open({ users, logins, onAccounts: () => neighbours.tell({ event: 'accounts' }) });
    neighbours.hear((notice) => {
      // A database that does not answer now is asked again with the next request that needs it.
      if (notice.event === 'accounts') people.heard().catch(() => undefined);
    });
    const readings = await Readings.open(join(store.dataFolder, 'read'), store.files, workshop, program);
    const doorkeeper = new Doorkeeper({
      people,
      tokenKey: loadTokenKey(store.dataFolder),
      hosts,
      isSecure,
      localName: async () => (await readSettings(store.settings)).technician ?? LOCAL_NAME,
    });
    return { store, people, doorkeeper, workshop, board, bell, readings, live, program, publicAddress, close };
  } catch (error) {
    await close();
    throw error;
  }
}
