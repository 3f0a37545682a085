import { expect, test } from 'vitest';
import { inputsSha256 } from '../../../src/jobs/inputs-hash.ts';
import type { GetServer } from '../contract.ts';
import { ANNA, finding, keptRecording, sampleCar, sampleCheck, sampleProgram } from '../samples.ts';

export function findingsContract(get: GetServer): void {
  test('a finding is kept whole, and is outdated exactly while its inputs differ', async () => {
    const { jobs, files } = await get().freshStore({ program: sampleProgram });
    const entry = await keptRecording(files, 'x');
    let job = await jobs.create(ANNA, { sections: { car: sampleCar, recordings: [entry] } });
    const made = finding(inputsSha256(job));
    job = await jobs.addFinding(job.id, ANNA, made);
    expect(job.findings).toEqual([{ ...made, outdated: false }]);
    expect(await jobs.read(job.id)).toEqual(job);

    job = await jobs.change(job.id, ANNA, job.version, { section: 'notes', value: [] });
    expect(job.findings[0]?.outdated).toBe(false);
    job = await jobs.change(job.id, ANNA, job.version, { section: 'checks', value: [sampleCheck] });
    expect(job.findings[0]?.outdated).toBe(true);
    expect((await jobs.read(job.id)).findings[0]?.outdated).toBe(true);
    job = await jobs.undo(job.id, ANNA, job.version);
    expect(job.findings[0]?.outdated).toBe(false);
    job = await jobs.change(job.id, ANNA, job.version, {
      section: 'recordings',
      value: [{ ...entry, useInFinding: false }],
    });
    expect(job.findings[0]?.outdated).toBe(true);
  });

  test('several findings stand in the order in which they were made, with words in the history', async () => {
    const { jobs } = await get().freshStore();
    const job = await jobs.create(ANNA, { sections: {} });
    const made = [1, 2, 3].map(() => finding(inputsSha256(job)));
    for (const each of made) await jobs.addFinding(job.id, ANNA, each);
    expect((await jobs.read(job.id)).findings.map(({ id }) => id)).toEqual(made.map(({ id }) => id));
    expect((await jobs.history(job.id)).at(-1)).toMatchObject({
      what: 'finding',
      section: 'findings',
      after: { id: made[2]!.id, verdict: 'fault', cause: 'leak', probability: 0.912, program: sampleProgram },
    });
  });

  test('a second finding of one id is refused and leaves the job as it was', async () => {
    const { jobs } = await get().freshStore();
    const job = await jobs.create(ANNA, { sections: {} });
    const made = finding(inputsSha256(job));
    const after = await jobs.addFinding(job.id, ANNA, made);
    await expect(jobs.addFinding(job.id, ANNA, made)).rejects.toThrow(/duplicate/);
    expect(await jobs.read(job.id)).toEqual(after);
  });
}
