import { expect, test } from 'vitest';
import { NoSuchJob } from '../../../src/jobs/job-store.ts';
import type { GetServer } from '../contract.ts';
import { ANNA, keptRecording } from '../samples.ts';

export function demoContract(get: GetServer): void {
  test('demo jobs go with their raw files; what others use stays', async () => {
    const { jobs, files } = await get().freshStore();
    const own = await keptRecording(files, 'only in the demo');
    const shared = await keptRecording(files, 'in both');
    const demo = await jobs.create(ANNA, { demo: true, sections: { recordings: [own, shared] } });
    const real = await jobs.create(ANNA, { sections: { recordings: [shared] } });
    expect(demo.demo).toBe(true);
    expect(await jobs.removeDemo(ANNA)).toBe(1);
    await expect(jobs.read(demo.id)).rejects.toBeInstanceOf(NoSuchJob);
    expect(await jobs.read(real.id)).toEqual(real);
    expect(await files.has(own.sha256)).toBe(false);
    expect(await files.has(shared.sha256)).toBe(true);
    expect(await jobs.removeDemo(ANNA)).toBe(0);
  });

  test('a file taken out of a job stays as long as the job does: it may be undone', async () => {
    const { jobs, files } = await get().freshStore();
    const entry = await keptRecording(files, 'taken out');
    const job = await jobs.create(ANNA, { sections: { recordings: [entry] } });
    await jobs.change(job.id, ANNA, 1, { section: 'recordings', value: [] });
    await jobs.removeDemo(ANNA);
    expect(await files.has(entry.sha256)).toBe(true);
    expect((await jobs.undo(job.id, ANNA, 2)).recordings).toEqual([entry]);
  });
}
