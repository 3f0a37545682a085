import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import { inputsSha256 } from '../../../src/jobs/inputs-hash.ts';
import type { Store } from '../../../src/jobs/open-store.ts';
import { type JobFile, jobFileSchema } from '../../../src/jobs/record/job-file.ts';
import type { GetServer } from '../contract.ts';
import { ANNA, BERT, bytesOf, finding, keptRecording, MOMENT, piecesOf, sampleCar } from '../samples.ts';

const TEXT = '\ufefftime_s;Druck\r\n0;1,5\u0000\n';
const BINARY = Uint8Array.from({ length: 300 }, (_, n) => 255 - (n % 256));

async function exported(store: Store, id: string): Promise<JobFile> {
  let text = '';
  for await (const piece of store.exportJob(id)) text += piece;
  return jobFileSchema.parse(JSON.parse(text));
}

async function fullJob(store: Store) {
  const { jobs, files } = store;
  const text = await keptRecording(files, TEXT, 'text');
  let job = await jobs.create(ANNA, { sections: { car: sampleCar, recordings: [text] } });
  job = await jobs.addRecording(job.id, BERT, await keptRecording(files, BINARY, 'packed'));
  job = await jobs.addFinding(job.id, ANNA, finding(inputsSha256(job)));
  const { sha256 } = await files.keep(piecesOf('%PDF-1.7'));
  const handOver = { id: randomUUID(), madeAt: MOMENT, by: 'Anna', pdfSha256: sha256, language: 'en' as const };
  await jobs.addHandOver(job.id, ANNA, handOver);
  await jobs.addRecording(job.id, BERT, await keptRecording(files, 'taken back'));
  const { version } = await jobs.read(job.id);
  return jobs.undo(job.id, ANNA, version);
}

export function jobFileContract(get: GetServer): void {
  test('a job goes to another shop and comes back whole: sections, findings, history, raw files', async () => {
    const here = await get().freshStore();
    const there = await get().freshStore();
    const job = await fullJob(here);
    const file = await exported(here, job.id);
    expect(file.job).toEqual(job);
    expect(file.files.map(({ encoding }) => encoding).sort()).toEqual(['base64', 'utf-8', 'utf-8', 'utf-8']);
    expect(file.files.find(({ encoding, content }) => encoding === 'utf-8' && content === TEXT)).toBeDefined();

    const taken = await there.importJob(BERT, file);
    const { version, changedAt, ...same } = job;
    expect(taken).toMatchObject(same);
    expect(taken.version).toBe(version + 1);
    expect(await there.jobs.read(job.id)).toEqual(taken);
    const history = await there.jobs.history(job.id);
    expect(history.slice(0, -1)).toEqual(await here.jobs.history(job.id));
    expect(history.at(-1)).toMatchObject({ what: 'imported', by: 'Bert', version: version + 1 });
    for (const { sha256 } of job.recordings) {
      expect(await bytesOf(there.files.open(sha256))).toEqual(await bytesOf(here.files.open(sha256)));
    }
    // What was undone there stays undone, what was not can still be.
    expect((await there.jobs.undo(job.id, BERT, taken.version)).recordings).toHaveLength(1);
    // And a second journey carries the same.
    const again = await exported(there, job.id);
    expect(again.files).toEqual(file.files);
  });

  test('a file from before there was a section for the monitor comes in with an empty one', async () => {
    const { jobs, exportJob, importJob } = await get().freshStore();
    const { id } = await jobs.create(ANNA, { sections: { vehicle: { name: 'Blue estate' } } });
    let text = '';
    for await (const piece of exportJob(id)) text += piece;
    const { monitor: _, ...job } = JSON.parse(text).job;
    const taken = await importJob(BERT, { ...JSON.parse(text), job });
    expect(taken.monitor).toEqual({ readings: [], conditions: null, parkedBeforeS: {}, plan: { routine: [] } });
    expect(taken.vehicle).toEqual({ name: 'Blue estate' });
  });

  test('where id and number are taken it gets others', async () => {
    const store = await get().freshStore();
    const job = await fullJob(store);
    const copy = await store.importJob(ANNA, await exported(store, job.id));
    expect(copy.id).not.toBe(job.id);
    expect(copy.number).toBe(2);
    expect(copy.findings[0]?.id).not.toBe(job.findings[0]?.id);
    expect(copy.findings[0]?.sheet).toEqual(job.findings[0]?.sheet);
    expect(await store.jobs.read(job.id)).toEqual(job);
    expect(await store.jobs.read(copy.id)).toEqual(copy);
  });

  test('a number from elsewhere is kept, and later jobs count on from it', async () => {
    const [here, there] = [await get().freshStore(), await get().freshStore()];
    for (let n = 0; n < 3; n++) await here.jobs.create(ANNA, { sections: {} });
    const fourth = await here.jobs.create(ANNA, { sections: {} });
    expect((await there.importJob(ANNA, await exported(here, fourth.id))).number).toBe(4);
    expect((await there.jobs.create(ANNA, { sections: {} })).number).toBe(5);
  });

  test.each<[string, (file: JobFile) => unknown, RegExp]>([
    [
      'a changed raw file',
      (file) => ({ ...file, files: file.files.map((each) => ({ ...each, content: `${each.content}AAAA` })) }),
      /has changed/,
    ],
    ['a raw file left out', (file) => ({ ...file, files: [] }), /recording "text"/],
    ['another format', (file) => ({ ...file, schema: 'vaporwright-job-file-9' }), /"schema"/],
    [
      'a section that is none',
      (file) => ({ ...file, job: { ...file.job, codes: [{ code: 'X', status: 'stored' }] } }),
      /job\.codes\.0\.code/,
    ],
    ['no object', () => 'hello', /not a job file/],
  ])('refuses %s and changes nothing', async (_what, spoil, words) => {
    const [here, there] = [await get().freshStore(), await get().freshStore()];
    const file = await exported(here, (await fullJob(here)).id);
    const thrown = await there.importJob(ANNA, spoil(file)).catch((error: unknown) => error);
    expect(thrown).toMatchObject({ name: 'StoreProblem', code: 'bad-file' });
    expect((thrown as Error).message).toMatch(words);
    expect(await there.jobs.list({})).toEqual([]);
  });
}
