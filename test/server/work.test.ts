/** Long work over HTTP: started once, watched, cancelled, found again after a reload; others are answered meanwhile. */

import { randomUUID } from 'node:crypto';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { Job } from '../../src/jobs/record/job.ts';
import type { ErrorBody } from '../../src/server/contract/error.ts';
import type { Work } from '../../src/server/contract/work.ts';
import type { Ring } from '../../src/server/work/bell.ts';
import { type TestServer, testServer } from '../store/test-server.ts';
import { type Bench, CAR, type Client, LEAK_CSV, openBench } from './bench.ts';

let server: TestServer;
let bench: Bench;
let page: Client;
beforeAll(async () => {
  server = await testServer();
  bench = await openBench(server);
  page = bench.client();
});
afterAll(async () => {
  await bench?.close();
  await server?.leave();
});
afterEach(() => expect(bench.faults).toEqual([]));

const readyJob = async (): Promise<Job> => {
  const job = await page.newJob({ car: CAR, codes: [{ code: 'P0442', status: 'stored' }] });
  expect((await page.send(job.id, { name: 'leak.csv', content: LEAK_CSV })).status).toBe(201);
  return (await page.ask<Job>('GET', `/jobs/${job.id}`)).body;
};
const find = (id: string, json?: unknown) =>
  page.ask<{ work: Work } & ErrorBody>('POST', `/jobs/${id}/findings`, json === undefined ? {} : { json });

test('a finding: started once, seen to move, kept with what it was made from; others are answered meanwhile', async () => {
  const job = await readyJob();
  const rings: Ring[] = [];
  const stop = bench.parts.bell.listen(job.id, (ring) => rings.push(ring));
  const delay = monitorEventLoopDelay({ resolution: 5 });
  delay.enable();
  const first = await find(job.id);
  expect(first.status).toBe(202);
  const second = await find(job.id);
  expect(second.body.work.id).toBe(first.body.work.id);
  // As a page that has been reloaded finds it again.
  const open = (await page.ask<{ work: Work[] }>('GET', `/jobs/${job.id}/work`)).body.work;
  expect(open.map(({ id }) => id)).toEqual([first.body.work.id]);
  const over = await page.untilOver(first.body.work.id);
  delay.disable();
  stop();
  expect(over).toMatchObject({ state: 'done', fraction: 1, kind: 'finding', jobId: job.id });
  console.log(
    `event loop while a finding ran: p99 ${(delay.percentile(99) / 1e6).toFixed(1)} ms, most ${(delay.max / 1e6).toFixed(1)} ms`,
  );

  const now = (await page.ask<Job>('GET', `/jobs/${job.id}`)).body;
  expect(now.findings.map(({ id, outdated }) => [id, outdated])).toEqual([[over.resultId, false]]);
  expect(now.findings[0]?.sheet).toMatchObject({ codes: ['P0442'], finding: { verdict: 'fault' } });
  expect(now.findings[0]?.sheet.finding.causes[0]?.id).toBe('leak');
  expect((await page.ask<{ work: Work[] }>('GET', `/jobs/${job.id}/work`)).body.work).toEqual([]);

  const fractions = rings.flatMap((ring) => (ring.event === 'work' ? [ring.data.fraction] : []));
  expect(fractions.length).toBeGreaterThan(3);
  expect(fractions).toEqual([...fractions].sort((a, b) => a - b));
  expect(rings.some((ring) => ring.event === 'job' && ring.data.version === now.version)).toBe(true);
});

test('a check by hand moves the finding', async () => {
  const job = await readyJob();
  const leak = (of: Job) =>
    of.findings.at(-1)?.sheet.finding.causes.find(({ id }) => id === 'leak')?.probability ?? Number.NaN;
  await page.untilOver((await find(job.id)).body.work.id);
  const before = (await page.ask<Job>('GET', `/jobs/${job.id}`)).body;
  const check = {
    id: randomUUID(),
    at: '2026-01-02T03:04:05.000Z',
    by: 'A',
    what: 'Smoke at the neck',
    result: 'None seen',
    speaksFor: [],
    speaksAgainst: ['leak'],
    strength: 'strong',
  };
  const json = { version: before.version, change: { section: 'checks', value: [check] } };
  const changed = await page.ask<Job>('PATCH', `/jobs/${job.id}`, { json });
  expect(changed.body.findings[0]?.outdated).toBe(true);
  await page.untilOver((await find(job.id)).body.work.id);
  const after = (await page.ask<Job>('GET', `/jobs/${job.id}`)).body;
  expect(after.findings).toHaveLength(2);
  expect(leak(after)).toBeLessThan(leak(before));
});

test('a cancelled finding leaves nothing, and the next one works', async () => {
  const job = await readyJob();
  const { work } = (await find(job.id)).body;
  const cancelled = await page.ask<{ work: Work }>('DELETE', `/work/${work.id}`);
  expect(cancelled.body.work.state).toBe('cancelled');
  expect((await page.ask<Job>('GET', `/jobs/${job.id}`)).body.findings).toEqual([]);
  const again = (await find(job.id)).body.work;
  expect(again.id).not.toBe(work.id);
  expect((await page.untilOver(again.id)).state).toBe('done');
});

test('a finding that the end of the server interrupts is told by the next one, until it is started again or put aside', async () => {
  const place = { dataFolder: server.folder(), databaseUrl: await server.freshDatabase() };
  const workOf = async (client: Client, id: string) =>
    (await client.ask<{ work: Work[] }>('GET', `/jobs/${id}/work`)).body.work;
  const first = await openBench(server, { place });
  const client = first.client();
  const job = await client.newJob({ car: CAR });
  await client.send(job.id, { name: 'leak.csv', content: LEAK_CSV });
  const json = { taken: 'before-repair' };
  const { work } = (await client.ask<{ work: Work }>('POST', `/jobs/${job.id}/findings`, { json })).body;
  await first.close();

  const second = await openBench(server, { place });
  const again = second.client();
  expect(await workOf(again, job.id)).toEqual([
    { ...work, state: 'interrupted', fraction: 0, words: 'interrupted', taken: 'before-repair' },
  ]);
  expect((await again.ask<{ work: Work }>('GET', `/work/${work.id}`)).body.work.state).toBe('interrupted');
  const restarted = (await again.ask<{ work: Work }>('POST', `/jobs/${job.id}/findings`, { json })).body.work;
  expect((await workOf(again, job.id)).map(({ id }) => id)).toEqual([restarted.id]);
  expect((await again.untilOver(restarted.id)).state).toBe('done');
  expect(await workOf(again, job.id)).toEqual([]);
  const third = (await again.ask<{ work: Work }>('POST', `/jobs/${job.id}/findings`)).body.work;
  await second.close();

  const last = await openBench(server, { place });
  const reader = last.client();
  expect((await workOf(reader, job.id)).map(({ id, state }) => [id, state])).toEqual([[third.id, 'interrupted']]);
  expect((await reader.ask<{ work: Work }>('DELETE', `/work/${third.id}`)).body.work.state).toBe('cancelled');
  expect(await workOf(reader, job.id)).toEqual([]);
  await last.close();
  for (const each of [first, second, last]) expect(each.faults).toEqual([]);
});

test('what is missing for a finding is said', async () => {
  const bare = await page.newJob();
  const noCar = await find(bare.id);
  expect([noCar.status, noCar.body.error.code]).toEqual([409, 'not-possible']);
  const noRecording = await find((await page.newJob({ car: CAR })).id);
  expect([noRecording.status, noRecording.body.error.message]).toEqual([409, expect.stringContaining('no recording')]);
  const before = await find((await readyJob()).id, { taken: 'after-repair' });
  expect(before.status).toBe(409);
  expect((await find(randomUUID())).status).toBe(404);
  expect((await page.ask('GET', `/work/${randomUUID()}`)).status).toBe(404);
  expect((await page.ask('DELETE', `/work/${randomUUID()}`)).status).toBe(404);
});

test('a recording without pressure fails the work with words that name it', async () => {
  const job = await page.newJob({ car: CAR });
  const rows = Array.from({ length: 40 }, (_, i) => `${i},${800 + i},50`);
  await page.send(job.id, { name: 'engine.csv', content: `time_s,engine_rpm,fuel_level_pct\n${rows.join('\n')}\n` });
  const over = await page.untilOver((await find(job.id)).body.work.id);
  expect(over.state).toBe('failed');
  expect(over.error).toMatchObject({
    code: 'unreadable',
    file: 'engine.csv',
    advice: expect.stringMatching(/mapping/),
  });
});

test('a hand-over: made as work, given as PDF, shown as page, in both languages', async () => {
  // No finding yet: what the document says of the recording is read from the recording.
  const job = await readyJob();
  const units = { pressure: 'inH2O', length: 'in', temperature: 'degF' };
  const json = { language: 'de', units, parts: ['customer', 'evidence'] };
  const started = await page.ask<{ work: Work }>('POST', `/jobs/${job.id}/hand-overs`, { json });
  expect(started.status).toBe(202);
  const over = await page.untilOver(started.body.work.id);
  expect(over).toMatchObject({ state: 'done', kind: 'hand-over' });
  const pdf = await page.ask('GET', `/jobs/${job.id}/hand-overs/${over.resultId}/pdf`);
  expect(pdf.headers['content-type']).toBe('application/pdf');
  expect(pdf.bytes.subarray(0, 5).toString()).toBe('%PDF-');
  expect((await page.ask<Job>('GET', `/jobs/${job.id}`)).body.handOvers).toHaveLength(1);

  for (const language of ['en', 'de']) {
    const html = await page.ask<string>('GET', `/jobs/${job.id}/hand-over.html?language=${language}&pressure=psi`);
    expect(html.status).toBe(200);
    expect(html.body).toContain(`<html lang="${language}"`);
    expect(html.body).not.toMatch(/<script/i);
    expect(html.headers['content-security-policy']).toMatch(/default-src 'none'; style-src-elem 'sha256-/);
  }
  expect((await page.ask('POST', `/jobs/${job.id}/hand-overs`, { json: { ...json, language: 'xx' } })).status).toBe(
    400,
  );
  expect((await page.ask('GET', `/jobs/${job.id}/hand-overs/${randomUUID()}/pdf`)).status).toBe(404);
});
