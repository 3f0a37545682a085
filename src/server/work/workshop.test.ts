import { afterEach, expect, test } from 'vitest';
import { Workshop } from './workshop.ts';

const INPUTS = { path: '/nowhere.csv', sha256: 'x', fileName: 'nowhere.csv', program: 'test' };
let workshop: Workshop | undefined;
afterEach(() => workshop?.close());

test('a worker that cannot start fails what waits for it, each time, instead of letting it wait for ever', async () => {
  workshop = new Workshop(1, new URL('file:///nowhere/worker.mjs'));
  for (let i = 0; i < 2; i++) {
    await expect(workshop.run('read', { folder: '/nowhere', inputs: INPUTS })).rejects.toThrow(/nowhere/);
  }
});

test('a task that was cancelled before it began does not begin', async () => {
  workshop = new Workshop(1);
  const stop = new AbortController();
  stop.abort();
  const run = workshop.run('read', { folder: '/nowhere', inputs: INPUTS }, { signal: stop.signal });
  await expect(run).rejects.toThrow(/abort/i);
});
