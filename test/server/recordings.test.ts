/** Recordings over HTTP: in as a stream, refused with words, understood, back byte for byte. */
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { Job } from '../../src/jobs/record/job.ts';
import { MAX_RECORDING_BYTES } from '../../src/server/contract/paths.ts';
import type { Preview, Unreadable, Uploaded } from '../../src/server/contract/recordings.ts';
import { decodeSamples } from '../../src/server/contract/samples.ts';
import { type TestServer, testServer } from '../store/test-server.ts';
import { type Bench, CAR, type Client, FORM_TYPE, LEAK_CSV, openBench, type Sent, type SentFile } from './bench.ts';

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

const send = <T>(file: SentFile, fields: Readonly<Record<string, string>> = {}) =>
  page.ask<T>('POST', `/jobs/${job.id}/recordings`, { form: { fields, file } });
const now = async () => (await page.ask<Job>('GET', `/jobs/${job.id}`)).body;
const at = (rid: string, what: string) => `/jobs/${job.id}/recordings/${rid}/${what}`;
const samplesOf = async (rid: string) => {
  const { bytes } = await page.ask('GET', at(rid, 'samples'));
  return decodeSamples(new Uint8Array(bytes).buffer);
};
const change = async (section: string, edit: (job: Job) => unknown) => {
  const before = await now();
  const json = { version: before.version, change: { section, value: edit(before) } };
  expect((await page.ask('PATCH', `/jobs/${job.id}`, { json })).status).toBe(200);
};

test('a recording comes in, is understood, and comes back as it was', async () => {
  const { status, body } = await send<Uploaded>(
    { name: 'Prüfung "1".csv', content: LEAK_CSV },
    { taken: 'before-repair', label: 'first hold' },
  );
  expect(status).toBe(201);
  const entry = body.job.recordings.find(({ id }) => id === body.recordingId);
  expect(entry).toMatchObject({ label: 'first hold', taken: 'before-repair', bytes: Buffer.byteLength(LEAK_CSV) });
  const raw = await page.ask('GET', at(body.recordingId, 'raw'));
  expect(raw.bytes.toString('utf8')).toBe(LEAK_CSV);
  expect(raw.headers['content-disposition']).toMatch(/^attachment; filename="[ -~]+"; filename\*=UTF-8''Pr%C3%BCfung/);

  const preview = (await page.ask<Preview>('GET', at(body.recordingId, 'preview'))).body;
  expect(preview.header[0]).toBe(LEAK_CSV.split(/[,\r\n]/)[0]);
  expect(preview.rows).toHaveLength(12);
  expect(preview.mapping?.columns.some(({ channel }) => channel === 'tankPressureGaugePa')).toBe(true);
  expect(preview.isGiven).toBe(false);
  expect(preview.problem).toBeNull();
  const lines = LEAK_CSV.trim().split('\n').length;
  expect(preview.report?.linesRead).toBe(lines);

  const { head, timeS, channels } = await samplesOf(body.recordingId);
  expect(head.label).toBe('first hold');
  expect(head.samples).toBe(preview.report?.samples);
  expect(head.procedure).toBe('vacuum-draw');
  expect(head.phases).toEqual(head.foundPhases);
  expect(timeS[0]).toBe(0);
  expect(channels.tankPressureGaugePa?.every(Number.isFinite)).toBe(true);
});

test('packed with gzip it is the same recording', async () => {
  const plain = (await send<Uploaded>({ name: 'a.csv', content: LEAK_CSV })).body;
  const packed = (await send<Uploaded>({ name: 'a.csv.gz', content: gzipSync(LEAK_CSV) })).body;
  const [one, other] = [await samplesOf(plain.recordingId), await samplesOf(packed.recordingId)];
  expect(other.timeS).toEqual(one.timeS);
  expect(other.channels).toEqual(one.channels);
});

test('samples are asked for again only when something about them has changed', async () => {
  const { recordingId } = (await send<Uploaded>({ name: 'tag.csv', content: LEAK_CSV })).body;
  const first = await page.ask('GET', at(recordingId, 'samples'));
  const tag = String(first.headers.etag);
  const again = () => page.ask('GET', at(recordingId, 'samples'), { headers: { 'if-none-match': tag } });
  expect((await again()).status).toBe(304);
  const phases = [{ kind: 'rest', fromS: 30, toS: 40 }];
  await change('recordings', ({ recordings }) =>
    recordings.map((entry) => (entry.id === recordingId ? { ...entry, phases } : entry)),
  );
  expect((await again()).status).toBe(200);
  const { head } = await samplesOf(recordingId);
  expect(head.phases).not.toEqual(head.foundPhases);
  expect(head.phases.some(({ kind, fromS, toS }) => kind === 'rest' && fromS <= 30 && toS >= 40)).toBe(true);
});

test('a mapping given by hand is used; one that does not fit is said to be so and can be put right', async () => {
  const content = 'a;b\n0;-1,0\n1;-2,0\n2;-3,5\n3;-3,0\n';
  const refused = await send<Unreadable>({ name: 'bare.csv', content });
  expect(refused.status).toBe(422);
  expect(refused.body.error).toMatchObject({ code: 'unreadable', file: 'bare.csv', line: 1 });
  expect(refused.body.head).toEqual({ header: ['a', 'b'], rows: expect.arrayContaining([['0', '-1,0']]) });
  const mapping = {
    schema: 'vaporwright-mapping-1',
    time: { columns: ['a'], format: 'seconds' },
    columns: [{ column: 'b', channel: 'tankPressureGaugePa', unit: 'kPa', reference: 'gauge' }],
  };
  const taken = await send<Uploaded>({ name: 'bare.csv', content }, { mapping: JSON.stringify(mapping) });
  expect(taken.status).toBe(201);
  const { recordingId } = taken.body;
  expect([...((await samplesOf(recordingId)).channels.tankPressureGaugePa ?? [])]).toEqual([
    -1000, -2000, -3500, -3000,
  ]);
  expect((await page.ask<Preview>('GET', at(recordingId, 'preview'))).body.isGiven).toBe(true);

  const wrong = { ...mapping, time: { columns: ['nothing'], format: 'seconds' } };
  await change('recordings', ({ recordings }) =>
    recordings.map((entry) => (entry.id === recordingId ? { ...entry, mapping: wrong } : entry)),
  );
  const preview = (await page.ask<Preview>('GET', at(recordingId, 'preview'))).body;
  expect(preview.problem?.expected).toContain('nothing');
  expect(preview.report).toBeNull();
  expect(preview.header).toEqual(['a', 'b']);
  const samples = await page.ask('GET', at(recordingId, 'samples'));
  expect(samples.status).toBe(422);
});

test('sensor volts become a pressure when the car’s sensor is known, without sending the file again', async () => {
  const volts = 'time_s,tank_pressure_v\n0,2.5\n1,2.0\n2,1.5\n3,1.5\n';
  const { recordingId } = (await send<Uploaded>({ name: 'volts.csv', content: volts })).body;
  const before = await samplesOf(recordingId);
  await change('car', () => ({
    schema: 'vaporwright-car-1',
    label: 'x',
    layout: 'engine-vacuum',
    pressureSensor: { minGaugePa: -4000, maxGaugePa: 4000, minV: 0.5, maxV: 4.5 },
  }));
  const after = await samplesOf(recordingId);
  expect([...(after.channels.tankPressureGaugePa ?? [])]).toEqual([0, -1000, -2000, -2000]);
  expect(before.channels.tankPressureGaugePa).not.toEqual(after.channels.tankPressureGaugePa);
});

describe('what is refused', () => {
  const cases: readonly (readonly [string, SentFile, number, string])[] = [
    ['a PDF', { name: 'a.pdf', content: '%PDF-1.7 …' }, 415, 'PDF'],
    ['a workbook', { name: 'a.xlsx', content: 'PK\x03\x04aaaa' }, 415, 'workbook'],
    [
      'a picture',
      { name: 'a.csv', content: Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex') },
      415,
      'PNG picture',
    ],
    ['JSON', { name: 'a.json', content: '{"a": 1}' }, 415, 'JSON'],
    ['a page', { name: 'a.html', content: '<!doctype html><p>x' }, 415, 'HTML'],
    ['nothing', { name: 'a.csv', content: '' }, 422, 'empty'],
    ['prose', { name: 'a.csv', content: 'Dear customer,\nyour car is ready.\n' }, 422, ''],
    ['half a gzip file', { name: 'a.csv.gz', content: gzipSync(LEAK_CSV).subarray(0, 900) }, 422, ''],
    ['a packed picture', { name: 'a.csv.gz', content: gzipSync(Buffer.alloc(5000)) }, 422, 'binary'],
  ];
  test.each(cases)('%s', async (_, file, status, found) => {
    const before = await now();
    const answer = await send<Unreadable>(file);
    expect(answer.status).toBe(status);
    expect(answer.body.error.file).toBe(file.name);
    expect(answer.body.error.found ?? '').toContain(found);
    expect(answer.body.error.expected).toMatch(/./);
    expect(answer.body.error.advice).toMatch(/./);
    expect(await now()).toEqual(before);
  });

  test('a cell that is no number: with line, column and name', async () => {
    const rows = Array.from({ length: 60 }, (_, i) => `${i},${i % 2 === 0 ? 'low' : 'lots'}`);
    const { status, body } = await send<Unreadable>({
      name: 'w.csv',
      content: `time_s,tank_pressure_pa\n${rows.join('\n')}\n`,
    });
    expect(status).toBe(422);
    expect(body.error).toMatchObject({
      file: 'w.csv',
      line: expect.any(Number),
      found: expect.stringMatching(/low|time_s/),
    });
  });

  test('too much: by what is announced, and by what comes', async () => {
    const announced: Sent = {
      headers: { 'content-length': String(MAX_RECORDING_BYTES * 3), 'content-type': FORM_TYPE },
    };
    const answer = await page.ask<Unreadable>('POST', `/jobs/${job.id}/recordings`, announced);
    expect([answer.status, answer.body.error.code]).toEqual([413, 'too-large']);
    expect(answer.body.error.expected).toContain('256 MB');
    // Attachments have the smaller limit, so that the test need not send a quarter of a gigabyte.
    const content = Buffer.alloc(33 * 1024 * 1024, 'x');
    const sent = await page.ask<Unreadable>('POST', `/jobs/${job.id}/attachments`, {
      form: { file: { name: 'big.bin', content } },
    });
    expect([sent.status, sent.body.error.code]).toEqual([413, 'too-large']);
    expect(sent.body.error.file).toBe('big.bin');
  });

  test('no form, a form without a file, a field that does not fit', async () => {
    const path = `/jobs/${job.id}/recordings`;
    expect((await page.ask('POST', path, { json: { file: 'x' } })).status).toBe(415);
    expect((await page.ask('POST', path, { form: { fields: { taken: 'before-repair' } } })).status).toBe(400);
    expect((await send({ name: 'a.csv', content: LEAK_CSV }, { taken: 'yesterday' })).status).toBe(400);
    expect((await send({ name: 'a.csv', content: LEAK_CSV }, { mapping: '{"schema"' })).status).toBe(400);
    const lost = '/jobs/00000000-0000-4000-8000-000000000000/recordings';
    expect((await page.ask('POST', lost, { form: { file: { name: 'a.csv', content: 'x' } } })).status).toBe(404);
  });

  test('nothing half-written stays behind', () => {
    const folder = join(bench.parts.store.dataFolder, 'files');
    expect(readdirSync(folder).filter((name) => statSync(join(folder, name)).isFile())).toEqual([]);
    const read = readdirSync(join(bench.parts.store.dataFolder, 'read'), { recursive: true, encoding: 'utf8' });
    expect(read.filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});
