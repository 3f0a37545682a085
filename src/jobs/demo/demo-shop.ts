/** The demo shop: invented cars in the hands of an invented technician, each at another stage. */
import { z } from 'zod';
import type { Actor, FileStore, JobStore } from '../job-store.ts';
import type { Job } from '../record/job.ts';
import type { SettingsStore } from '../store/settings.ts';
import { buildJob } from './build-job.ts';
import { DEMO_TECHNICIAN, type DemoJob } from './demo-job.ts';
import { FINISHED_JOBS } from './jobs-finished.ts';
import { OPEN_JOBS } from './jobs-open.ts';

/** In the order in which they came in. */
export const DEMO_JOBS: readonly DemoJob[] = [...FINISHED_JOBS, ...OPEN_JOBS].sort((one, other) =>
  one.openedAt < other.openedAt ? -1 : 1,
);

/** Folder of the package that holds the demo shop's files. */
export const DEMO_FOLDER = 'examples/demo-shop';

export interface DemoShopStore {
  readonly jobs: JobStore;
  readonly files: FileStore;
  readonly settings: SettingsStore;
}

const ACTOR: Actor = { name: DEMO_TECHNICIAN };

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

/** Adds the demo jobs. `folder`: where `DEMO_FOLDER` lies on this machine. */
export async function addDemoShop(
  store: Pick<DemoShopStore, 'jobs' | 'files'>,
  folder: string,
): Promise<readonly Job[]> {
  const added: Job[] = [];
  for (const [i, told] of DEMO_JOBS.entries()) {
    const { job, files } = await buildJob(folder, told, i + 1);
    for (const { bytes } of files) await store.files.keep(once(bytes));
    added.push(await store.jobs.import(ACTOR, job, []));
  }
  return added;
}

const MARK = 'demo-shop';
const markSchema = z.object({ added: z.boolean() });

/**
 * Adds the demo shop to a store that has never had a job, once: who has removed it does not get it back.
 * Returns how many jobs were added.
 */
export async function addDemoShopOnFirstStart(store: DemoShopStore, folder: string): Promise<number> {
  if ((await store.settings.read(MARK, markSchema)) !== undefined) return 0;
  const isEmpty = (await store.jobs.list({ limit: 1 })).length === 0;
  const added = isEmpty ? (await addDemoShop(store, folder)).length : 0;
  await store.settings.write(ACTOR, MARK, { added: isEmpty });
  return added;
}
