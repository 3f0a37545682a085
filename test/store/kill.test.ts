/** Nothing acknowledged is lost: writers are killed in the midst of it, and so is the database. */
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openEmbedded } from '../../src/jobs/embedded/embedded.ts';
import { readPostmaster } from '../../src/jobs/embedded/postmaster-file.ts';
import { openStore } from '../../src/jobs/open-store.ts';
import { checkJobs, checkWhole } from './kill/check-store.ts';
import type { Acknowledged } from './kill/protocol.ts';
import { bundleWriter, startWriter } from './kill/run-writer.ts';
import { testFolder } from './test-server.ts';

const KILLS = 200;
const AT_ONCE = 5;
/** Every so many rounds the database is killed together with the writers. */
const DATABASE_KILLED_EVERY = 8;
/** A writer is killed after so many changes at most, and a moment that ends anywhere in the next one. */
const MOST_CHANGES = 8;
const LONGEST_PAUSE_MS = 12;
const LONGEST_OPENING_MS = 250;

/** Repeatable moments (linear congruence, Numerical Recipes' constants). */
function moments(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

let bundle: string;
const folders: string[] = [];
const newFolder = (): string => {
  const folder = testFolder();
  folders.push(folder);
  return folder;
};

beforeAll(async () => {
  bundle = await bundleWriter(newFolder());
});
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

test(`${KILLS} kills during writes: each acknowledged change is there, no partial one is`, {
  timeout: 600_000,
}, async () => {
  const dataFolder = newFolder();
  const next = moments(20260301);
  let present = await openEmbedded(dataFolder);
  let kills = 0;
  let looked = 0;
  for (let round = 0; kills < KILLS; round++) {
    const writers = Array.from({ length: AT_ONCE }, (_, n) => startWriter(bundle, dataFolder, round * 100 + n));
    const told = await Promise.all(
      writers.map(async (writer): Promise<readonly Acknowledged[]> => {
        await writer.hasWritten(Math.floor(next() * (MOST_CHANGES + 1)));
        await pause(next() * LONGEST_PAUSE_MS);
        return writer.kill();
      }),
    );
    kills += AT_ONCE;
    if (round % DATABASE_KILLED_EVERY === 0) {
      const late = startWriter(bundle, dataFolder, round * 100 + 99);
      await late.hasWritten(Math.floor(next() * MOST_CHANGES));
      await pause(next() * LONGEST_PAUSE_MS);
      process.kill(readPostmaster(join(dataFolder, 'postgres'))!.pid, 'SIGKILL');
      told.push(await late.kill());
      kills++;
      await present.leave();
      present = await openEmbedded(dataFolder);
    }
    const store = await openStore({ dataFolder });
    looked += await checkJobs(store, told.flat());
    await store.close();
  }
  // Else nothing would have been shown.
  expect(looked).toBeGreaterThan(KILLS);
  const store = await openStore({ dataFolder });
  await checkWhole(store);
  await store.close();
  await present.leave();
  expect(readPostmaster(join(dataFolder, 'postgres'))).toBeUndefined();
});

test('kills while the store is being opened leave no lock and no half of anything', async () => {
  const dataFolder = newFolder();
  const next = moments(7);
  for (let round = 0; round < 6; round++) {
    const writers = Array.from({ length: 2 }, (_, n) => startWriter(bundle, dataFolder, round * 10 + n));
    const told = await Promise.all(
      writers.map(async (writer) => {
        await pause(next() * LONGEST_OPENING_MS * (round + 1));
        return writer.kill();
      }),
    );
    const store = await openStore({ dataFolder });
    await checkJobs(store, told.flat());
    await checkWhole(store);
    await store.close();
  }
  expect(readdirSync(dataFolder).sort()).toEqual(['files', 'open', 'postgres']);
  expect(readdirSync(join(dataFolder, 'open'))).toEqual([]);
});
