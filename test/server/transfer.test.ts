/** One job out and in, everything out and in. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Job } from '../../src/jobs/record/job.ts';
import { jobFileSchema } from '../../src/jobs/record/job-file.ts';
import type { ErrorBody } from '../../src/server/contract/error.ts';
import { type TestServer, testServer } from '../store/test-server.ts';
import { type Bench, CAR, LEAK_CSV, openBench } from './bench.ts';

let server: TestServer;
let from: Bench;
let to: Bench;
beforeAll(async () => {
  server = await testServer();
  from = await openBench(server);
  to = await openBench(server);
});
afterAll(async () => {
  expect([...(from?.faults ?? []), ...(to?.faults ?? [])]).toEqual([]);
  await from?.close();
  await to?.close();
  await server?.leave();
});

const full = async (bench: Bench): Promise<Job> => {
  const page = bench.client();
  const job = await page.newJob({ car: CAR, vehicle: { name: 'Blue estate' } });
  await page.send(job.id, { name: 'leak.csv', content: LEAK_CSV });
  return (await page.ask<Job>('GET', `/jobs/${job.id}`)).body;
};

test('a job goes to another shop as one plain file, with its recording', async () => {
  const job = await full(from);
  const file = await from.client().ask('GET', `/jobs/${job.id}/export`);
  expect(file.headers['content-disposition']).toContain(`job-${job.number}.vaporwright.json`);
  const text = file.bytes.toString('utf8');
  expect(jobFileSchema.parse(JSON.parse(text)).job.id).toBe(job.id);
  const page = to.client();
  const taken = await page.ask<Job>('POST', '/jobs/import', { form: { file: { name: 'job.json', content: text } } });
  expect(taken.status).toBe(201);
  expect(taken.body.vehicle).toEqual(job.vehicle);
  const raw = await page.ask('GET', `/jobs/${taken.body.id}/recordings/${taken.body.recordings[0]?.id}/raw`);
  expect(raw.bytes.toString('utf8')).toBe(LEAK_CSV);
  const asBody = await page.ask<Job>('POST', '/jobs/import', { json: JSON.parse(text) });
  expect(asBody.status).toBe(201);
  expect(asBody.body.id).not.toBe(taken.body.id);
});

test('what is no job file is said to be none', async () => {
  const page = to.client();
  const sent = (content: string) =>
    page.ask<ErrorBody>('POST', '/jobs/import', { form: { file: { name: 'job.json', content } } });
  for (const content of ['{', '[]', '{"schema":"vaporwright-job-file-1"}']) {
    const { status, body } = await sent(content);
    expect([content, status, body.error.code]).toEqual([content, 422, 'unreadable']);
    expect(body.error.advice).toMatch(/./);
  }
});

test('a backup goes into an empty store; over a used one only when that is confirmed', async () => {
  const job = await full(from);
  const backup = (await from.client().ask('POST', '/backup')).bytes;
  const empty = await openBench(server);
  const page = empty.client();
  const restore = (fields: Readonly<Record<string, string>> = {}, content: Uint8Array = backup) =>
    page.ask<{ jobs: number } & ErrorBody>('POST', '/restore', {
      form: { fields, file: { name: 'x.backup', content } },
    });
  const broken = await restore({}, backup.subarray(0, backup.length >> 1));
  expect([broken.status, broken.body.error.code]).toEqual([422, 'unreadable']);
  const done = await restore();
  expect(done.status).toBe(200);
  expect(done.body.jobs).toBeGreaterThan(0);
  expect((await page.ask<Job>('GET', `/jobs/${job.id}`)).body).toEqual(job);
  const again = await restore();
  expect([again.status, again.body.error.code]).toEqual([409, 'not-possible']);
  expect((await restore({ confirm: 'true' })).status).toBe(200);
  expect((await page.ask('POST', '/restore', { json: {} })).status).toBe(400);
  expect(empty.faults).toEqual([]);
  await empty.close();
});

test('the demo shop goes with one request, and nothing else does', async () => {
  const page = from.client();
  const mine = await page.newJob();
  await from.parts.store.jobs.create({ name: 'x' }, { demo: true, sections: {} });
  expect((await page.ask('DELETE', '/demo')).body).toEqual({ removed: 1 });
  expect((await page.ask('DELETE', '/demo')).body).toEqual({ removed: 0 });
  expect((await page.ask('GET', `/jobs/${mine.id}`)).status).toBe(200);
});
