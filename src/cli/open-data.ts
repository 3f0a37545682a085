/** The store for a command that is not the server: the same data, shared with a server that runs on it. */
import { join } from 'node:path';
import { openStore, type Store } from '../jobs/open-store.ts';
import { makeFolderFor } from './make-folder.ts';
import { dataFolderFrom, storeFailure } from './serve.ts';
import { PROGRAM } from './version.ts';

export async function withStore<T>(data: string | undefined, work: (store: Store) => Promise<T>): Promise<T> {
  const dataFolder = dataFolderFrom(data);
  makeFolderFor(join(dataFolder, 'database'));
  try {
    const store = await openStore({
      dataFolder,
      program: PROGRAM,
      ...(process.env.DATABASE_URL ? { databaseUrl: process.env.DATABASE_URL } : {}),
    });
    try {
      return await work(store);
    } finally {
      await store.close();
    }
  } catch (error) {
    throw storeFailure(error);
  }
}
