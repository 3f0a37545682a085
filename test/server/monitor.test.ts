/** Monitor and inspection over HTTP: what a capture said of the car, the job's section, the shop's inspection rules. */
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { HistoryEntry, Job } from '../../src/jobs/record/job.ts';
import { FEDERAL_RULE } from '../../src/readiness/inspection-rules.ts';
import type { Preview, Unreadable, Uploaded } from '../../src/server/contract/recordings.ts';
import type { Settings } from '../../src/server/contract/settings.ts';
import { captureText, HOT_DAY, MADE_VIN, madeCar } from '../readiness/drive-capture.ts';
import { sampleMonitor } from '../store/samples.ts';
import { type TestServer, testServer } from '../store/test-server.ts';
import { type Bench, CAR, type Client, openBench, type SentFile } from './bench.ts';

let server: TestServer;
let bench: Bench;
let page: Client;
let job: Job;
beforeAll(async () => {
  server = await testServer();
  bench = await openBench(server);
  page = bench.client();
  job = await page.newJob({ car: CAR });
});
afterAll(async () => {
  await bench?.close();
  await server?.leave();
});
afterEach(() => expect(bench.faults).toEqual([]));

const send = <T>(file: SentFile) => page.ask<T>('POST', `/jobs/${job.id}/recordings`, { form: { fields: {}, file } });
const previewOf = async (rid: string) =>
  (await page.ask<Preview>('GET', `/jobs/${job.id}/recordings/${rid}/preview`)).body;
const entryOf = ({ job: now, recordingId }: Uploaded) => now.recordings.find(({ id }) => id === recordingId);
const change = (section: string, value: unknown, version: number) =>
  page.ask<Job>('PATCH', `/jobs/${job.id}`, { json: { version, change: { section, value } } });

test('a capture tells what the car said of itself, beside its samples', async () => {
  const { status, body } = await send<Uploaded>({ name: 'hot-day.log', content: captureText(madeCar(HOT_DAY)) });
  expect(status).toBe(201);
  expect(entryOf(body)?.useInFinding).toBe(true);
  const { capture, report } = await previewOf(body.recordingId);
  expect(report?.samples).toBeGreaterThan(1000);
  expect(capture?.at).toMatch(/^2026-/);
  expect(capture?.status).toMatchObject({ warmUpsSinceClear: 3, distanceSinceClearM: 96_000, vin: MADE_VIN });
  expect(capture?.status.sinceClear).toMatchObject({ lampOn: true, codeCount: 1 });
  expect(capture?.status.inUse).toMatchObject({ EVAPCOMP: 16, EVAPCOND: 50 });
  expect(capture?.codes.map(({ code, status: which }) => `${code} ${which}`)).toEqual([
    'P0456 confirmed',
    'P0442 pending',
    'P0456 permanent',
  ]);
  expect(capture?.codesRead).toEqual(['confirmed', 'pending', 'permanent']);
  expect(capture?.freezeFrames[0]).toMatchObject({ code: 'P0456' });
  expect(capture?.results.map(({ monitorId }) => monitorId)).toEqual([0x3c, 0x3d]);
});

test('a capture of codes and counters alone is kept, and counts for no finding', async () => {
  const { status, body } = await send<Uploaded>({ name: 'codes.log', content: captureText(madeCar(HOT_DAY), false) });
  expect(status).toBe(201);
  expect(entryOf(body)?.useInFinding).toBe(false);
  const { capture, report, problem } = await previewOf(body.recordingId);
  expect(report).toBeNull();
  expect(problem?.message).toMatch(/holds no recording/);
  expect(capture?.codesRead).toHaveLength(3);
});

test('frames of other talk are no recording', async () => {
  const lines = Array.from({ length: 50 }, (_, k) => `(${1_790_000_000 + k}.000000) can0 123#0011223344556677`);
  const { status, body } = await send<Unreadable>({ name: 'talk.log', content: lines.join('\n') });
  expect(status).toBe(422);
  expect(body.error.code).toBe('unreadable');
});

test('the section is kept, told in the history, and taken back', async () => {
  const before = (await page.ask<Job>('GET', `/jobs/${job.id}`)).body;
  expect(before.monitor.readings).toEqual([]);
  const value = sampleMonitor(before.recordings[0]!.id);
  const { status, body } = await change('monitor', value, before.version);
  expect(status).toBe(200);
  expect(body.monitor).toEqual(value);
  const { history } = (await page.ask<{ history: HistoryEntry[] }>('GET', `/jobs/${job.id}/history`)).body;
  expect(history.at(-1)).toMatchObject({ section: 'monitor', what: 'changed', before: before.monitor, after: value });
  const undone = await page.ask<Job>('POST', `/jobs/${job.id}/undo`, { json: { version: body.version } });
  expect(undone.body.monitor).toEqual(before.monitor);
});

test.each([
  [
    'a monitor that there is not',
    {
      status: {
        sinceClear: {
          scope: 'since-clear',
          ignition: 'spark',
          monitors: [{ name: 'brakes', supported: true, complete: true }],
        },
      },
    },
  ],
  ['a ratio below nothing', { status: { warmUpsSinceClear: -1 } }],
  ['a fourth list of codes', { codesRead: ['cleared'] }],
])('%s is refused', async (_, wrong) => {
  const now = (await page.ask<Job>('GET', `/jobs/${job.id}`)).body;
  const good = sampleMonitor(now.recordings[0]!.id);
  const value = { ...good, readings: [{ ...good.readings[0], ...wrong }] };
  expect((await change('monitor', value, now.version)).status).toBe(400);
});

test('inspection rules of the place are settings of the shop', async () => {
  const { body } = await page.ask<Settings>('GET', '/settings');
  const own = { ...FEDERAL_RULE, id: 'here', name: 'As it is done here', mark: 'given by the user' as const };
  const json = { ...body, inspectionRules: [own], inspectionRule: 'here' };
  expect((await page.ask('PUT', '/settings', { json })).status).toBe(200);
  expect((await page.ask<Settings>('GET', '/settings')).body).toEqual(json);
  const wrong = { ...json, inspectionRules: [{ ...own, allowances: [] }] };
  expect((await page.ask('PUT', '/settings', { json: wrong })).status).toBe(400);
});
