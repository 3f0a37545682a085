/** Jobs over HTTP: what is answered, and what is refused with which words. */
import { randomUUID } from 'node:crypto';
import sharp from 'sharp';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { HistoryEntry, Job, JobSummary } from '../../src/jobs/record/job.ts';
import type { ErrorBody } from '../../src/server/contract/error.ts';
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

const patch = (job: Job, section: string, value: unknown, version = job.version) =>
  page.ask<Job & { current: Job } & ErrorBody>('PATCH', `/jobs/${job.id}`, {
    json: { version, change: { section, value } },
  });

test('a job is opened, filled in, found, taken back, closed; its history tells it all', async () => {
  const opened = await page.ask<Job>('POST', '/jobs', {
    json: { sections: { complaint: { words: 'Smells of fuel in the garage', types: ['smell'] } } },
  });
  expect(opened.status).toBe(201);
  expect(opened.headers.location).toBe(`/jobs/${opened.body.id}`);
  const named = await patch(opened.body, 'vehicle', { name: 'Blue estate', registration: 'XY 77' });
  expect(named.status).toBe(200);
  expect(named.body.vehicle.name).toBe('Blue estate');

  const found = await page.ask<{ jobs: JobSummary[] }>(
    'GET',
    '/jobs?words=garage%20xy&waitsFor=car&closed=false&limit=5',
  );
  expect(found.body.jobs.map(({ id }) => id)).toEqual([opened.body.id]);
  expect((await page.ask<{ jobs: JobSummary[] }>('GET', '/jobs?words=nothing-like-it')).body.jobs).toEqual([]);

  const undone = await page.ask<Job>('POST', `/jobs/${opened.body.id}/undo`, { json: { version: named.body.version } });
  expect(undone.body.vehicle.name).toBe('');
  const closed = await page.ask<Job>('POST', `/jobs/${opened.body.id}/closed`, {
    json: { version: undone.body.version, closed: true },
  });
  expect(closed.body.closed).toBe(true);
  const { history } = (await page.ask<{ history: HistoryEntry[] }>('GET', `/jobs/${opened.body.id}/history`)).body;
  expect(history.map(({ what }) => what).sort()).toEqual(['changed', 'closed', 'created', 'undone']);
  expect(new Set(history.map(({ by }) => by))).toEqual(new Set(['workbench']));
});

test('who changes an old version is told what stands now, and nothing is written', async () => {
  const job = await page.newJob();
  const first = await patch(job, 'notes', [
    { id: randomUUID(), at: '2026-01-02T03:04:05.000Z', by: 'A', text: 'first' },
  ]);
  const late = await patch(job, 'vehicle', { name: 'late' });
  expect(late.status).toBe(409);
  expect(late.body.error.code).toBe('changed-meanwhile');
  expect(late.body.current).toEqual(first.body);
  expect((await page.ask<Job>('GET', `/jobs/${job.id}`)).body.vehicle.name).toBe('');
});

test.each([
  ['GET', '/jobs?limit=0', undefined, 'querystring'],
  ['GET', '/jobs?waitsFor=rain', undefined, 'querystring'],
  ['GET', '/jobs/seventeen', undefined, 'params'],
  ['POST', '/jobs', { sections: { vehicle: { name: 7 } } }, 'body'],
  ['POST', '/jobs', { sections: { colour: 'blue' } }, 'body'],
  [
    'PATCH',
    '/jobs/6a2f0a38-9d1c-4f5e-8f3b-1c2d3e4f5a6b',
    { version: 1, change: { section: 'findings', value: [] } },
    'body',
  ],
] as const)('%s %s with %j does not fit, and the answer says where', async (method, path, json, part) => {
  const { status, body } = await page.ask<ErrorBody>(method, path, json === undefined ? {} : { json });
  expect(status).toBe(400);
  expect(body.error.code).toBe('bad-request');
  expect(body.error.found).toContain(part);
});

test('a body that is no JSON, a form where none belongs, an address that is none', async () => {
  const broken = await page.ask<ErrorBody>('POST', '/jobs', { headers: { 'content-type': 'application/json' } });
  expect([broken.status, broken.body.error.code]).toEqual([400, 'bad-request']);
  const text = await page.ask<ErrorBody>('POST', '/jobs', { headers: { 'content-type': 'application/xml' }, json: {} });
  expect([text.status, text.body.error.code]).toEqual([415, 'not-a-recording']);
  const lost = await page.ask<ErrorBody>('GET', '/nothing-here');
  expect([lost.status, lost.body.error.code]).toEqual([404, 'not-found']);
  const gone = await page.ask<ErrorBody>('GET', `/jobs/${randomUUID()}`);
  expect([gone.status, gone.body.error.code]).toEqual([404, 'not-found']);
});

test('entries that stand for files are edited and taken out, never invented', async () => {
  const job = await page.newJob({ car: CAR });
  const sent = await page.send(job.id, { name: 'leak.csv', content: LEAK_CSV });
  expect(sent.status).toBe(201);
  const now = (await page.ask<Job>('GET', `/jobs/${job.id}`)).body;
  const [entry] = now.recordings;
  const other = await patch(now, 'recordings', [{ ...entry, sha256: 'a'.repeat(64) }]);
  expect([other.status, other.body.error.message]).toEqual([
    400,
    expect.stringContaining('"sha256" came with the file'),
  ]);
  const invented = await patch(now, 'recordings', [entry, { ...entry, id: randomUUID() }]);
  expect(invented.status).toBe(400);
  const twice = await patch(now, 'recordings', [entry, entry]);
  expect(twice.status).toBe(400);
  const renamed = await patch(now, 'recordings', [{ ...entry, label: 'before', useInFinding: false }]);
  expect([renamed.status, renamed.body.recordings?.[0]?.label]).toEqual([200, 'before']);
  const out = await patch(renamed.body, 'recordings', []);
  expect([out.status, out.body.recordings]).toEqual([200, []]);
  const back = await page.ask<Job>('POST', `/jobs/${job.id}/undo`, { json: { version: out.body.version } });
  expect(back.body.recordings).toEqual(renamed.body.recordings);
});

test('settings are kept, and a technician named there stands in the history', async () => {
  const first = await page.ask<{ limits: unknown[] }>('GET', '/settings');
  expect(first.body.limits).toHaveLength(2);
  const json = { ...first.body, shop: { name: 'A shop', address: 'A street 1' }, technician: 'Robin' };
  expect((await page.ask('PUT', '/settings', { json })).status).toBe(200);
  expect((await page.ask('GET', '/settings')).body).toEqual(json);
  const job = await page.newJob();
  const { history } = (await page.ask<{ history: HistoryEntry[] }>('GET', `/jobs/${job.id}/history`)).body;
  expect(history[0]?.by).toBe('Robin');
});

test('a photo stands in the hand-over as a page, and one that is none stops nothing', async () => {
  const job = await page.newJob();
  const attach = (name: string, content: Uint8Array, caption: string) =>
    page.ask<Job>('POST', `/jobs/${job.id}/attachments`, { form: { fields: { caption }, file: { name, content } } });
  const photo = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#808080' } })
    .png()
    .toBuffer();
  await attach('neck.png', photo, 'Neck after cleaning');
  await attach('broken.png', Buffer.concat([photo.subarray(0, 8), Buffer.alloc(64)]), 'Nothing to see');
  const { body, headers } = await page.ask<string>('GET', `/jobs/${job.id}/hand-over.html`);
  const html = String(body);
  expect(html.match(/<img src="data:image\/jpeg;base64,[^"]+" alt="Neck after cleaning"/g)).toHaveLength(1);
  expect(html).toContain('broken.png');
  expect(headers['content-security-policy']).toContain('img-src data:');
  const customer = await page.ask<string>('GET', `/jobs/${job.id}/hand-over.html?parts=customer`);
  expect(String(customer.body)).not.toContain('<img');
});

test('photos keep their kind by what they are, and nothing that could run is shown', async () => {
  const job = await page.newJob();
  const png = Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), Buffer.alloc(64)]);
  const attach = (name: string, content: Uint8Array | string) =>
    page.ask<Job>('POST', `/jobs/${job.id}/attachments`, {
      form: { fields: { caption: 'Neck' }, file: { name, content } },
    });
  await attach('neck.png', png);
  const { body } = await attach('../../etc/page.html', '<script>alert(1)</script>');
  expect(body.attachments.map(({ fileName, mediaType }) => [fileName, mediaType])).toEqual([
    ['neck.png', 'image/png'],
    ['page.html', 'application/octet-stream'],
  ]);
  const [picture, script] = body.attachments;
  const shown = await page.ask('GET', `/jobs/${job.id}/attachments/${picture?.id}`);
  expect(shown.bytes.equals(png)).toBe(true);
  expect(shown.headers['content-type']).toBe('image/png');
  const saved = await page.ask('GET', `/jobs/${job.id}/attachments/${script?.id}`);
  expect(saved.headers['content-disposition']).toMatch(/^attachment/);
  expect(saved.headers['content-type']).toBe('application/octet-stream');
  expect(saved.headers['content-security-policy']).toContain('sandbox');
  expect(saved.headers['x-content-type-options']).toBe('nosniff');
});
