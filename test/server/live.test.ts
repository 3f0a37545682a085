/** A car recorded live over HTTP: kept like a file that was sent, whatever happens to adapter, page and program. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { makeCar } from '../../src/capture/simulated-car/make-car.ts';
import { type ServedCar, serveCar } from '../../src/capture/simulated-car/serve-car.ts';
import type { HistoryEntry, Job } from '../../src/jobs/record/job.ts';
import type { ErrorBody } from '../../src/server/contract/error.ts';
import type { Cleared, LiveKept, LiveStart, LiveStatus } from '../../src/server/contract/live.ts';
import type { Preview } from '../../src/server/contract/recordings.ts';
import { decodeSamples } from '../../src/server/contract/samples.ts';
import { type RunningServer, startServer } from '../../src/server/start-server.ts';
import { type TestServer, testServer } from '../store/test-server.ts';
import { CAR, PROGRAM } from './bench.ts';
import { LivePage } from './live-page.ts';

let database: TestServer;
let server: RunningServer;
let page: LivePage;
const faults: unknown[] = [];
const LEAK = { kind: 'leak', place: 'cap', size: 1e-3 } as const;
const SIMULATED: LiveStart = {
  port: { kind: 'simulated', layout: 'engine-vacuum', fault: LEAK, startS: 4 },
  procedure: 'vacuum-draw',
};

const start = (dataFolder: string, databaseUrl: string): Promise<RunningServer> =>
  startServer({
    dataFolder,
    databaseUrl,
    port: 0,
    pagesFolder: '/nowhere',
    program: PROGRAM,
    version: '0.0.0-test',
    onFault: (error) => faults.push(error),
  });

beforeAll(async () => {
  database = await testServer();
  server = await start(database.folder(), await database.freshDatabase());
  page = await new LivePage(server.address).open();
});
afterAll(async () => {
  await server?.close();
  await database?.leave();
});
afterEach(() => expect(faults).toEqual([]));

const begin = async (jobId: string, request: LiveStart): Promise<LiveStatus> => {
  const { status, body } = await page.ask<{ live: LiveStatus }>('POST', `/jobs/${jobId}/live`, request);
  expect(status).toBe(201);
  return body.live;
};
const rawOf = async (address: string, jobId: string, recordingId: string): Promise<Buffer> =>
  Buffer.from(await (await fetch(`${address}/api/v1/jobs/${jobId}/recordings/${recordingId}/raw`)).arrayBuffer());
const liveFolders = (of: RunningServer): string[] => readdirSync(join(of.dataFolder, 'live'));

test('from the simulated car: rows, phases and the finding grow, a page that was away gets the rest, and it becomes a recording', async () => {
  const job = await page.newJob({ car: CAR });
  const { id } = await begin(job.id, SIMULATED);
  expect(liveFolders(server)).toEqual([id]);

  const first = await page.hear(job.id, ({ event, data }) => event === 'rows' && data.from + data.timeS.length > 100);
  const rowsOf = (heard: typeof first.heard) => heard.flatMap((one) => (one.event === 'rows' ? [one.data] : []));
  const before = rowsOf(first.heard);
  expect(before.some(({ channels }) => channels.tankPressureGaugePa?.some((value) => value !== null) === true)).toBe(
    true,
  );
  // The page is gone for a while; what it asks for then joins on without a gap.
  await page.until(job.id, ({ rows }) => rows > Number(first.lastId) + 50);
  const second = await page.hear(
    job.id,
    ({ event, data }) => event === 'follow' && data.ventShut.length > 0 && (data.finding?.causes.length ?? 0) > 0,
    { 'last-event-id': first.lastId! },
  );
  const all = [...before, ...rowsOf(second.heard)];
  let rows = 0;
  let lastS = -1;
  for (const { from, timeS } of all) {
    expect(from).toBe(rows);
    rows += timeS.length;
    for (const t of timeS) {
      expect(t).toBeGreaterThan(lastS);
      lastS = t;
    }
  }
  const last = second.heard.at(-1)!;
  if (last.event !== 'follow') throw new Error('the stream ended');
  expect(last.data.phases.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['baseline', 'draw']));
  expect(last.data.ventShut.length).toBe(1);
  expect(last.data.finding!.procedure).toBe('vacuum-draw');

  const status = await page.until(job.id, ({ said }) => said !== null);
  expect(status).toMatchObject({ state: 'sampling', problem: null, follows: 'finding', taken: 'before-repair' });
  expect(status.said!.codes.map(({ code, status: how }) => [code, how])).toEqual([
    ['P0442', 'confirmed'],
    ['P0442', 'permanent'],
  ]);
  expect(status.channels.find(({ name }) => name === 'tankPressureGaugePa')!.rateHz).toBeGreaterThan(1);

  const over = page.hear(job.id, ({ event }) => event === 'over');
  const kept = await page.ask<LiveKept>('POST', `/jobs/${job.id}/live/${id}/keep`, {
    procedure: 'vacuum-draw',
    label: 'draw on bay 2',
  });
  expect(kept.status).toBe(201);
  const { recordingId, job: after } = kept.body;
  expect((await over).heard.at(-1)).toEqual({ event: 'over', data: { how: 'kept', recordingId } });
  const entry = after.recordings.find((each) => each.id === recordingId)!;
  expect(entry).toMatchObject({ label: 'draw on bay 2', facts: { procedure: 'vacuum-draw' }, useInFinding: true });
  const raw = await rawOf(server.address, job.id, recordingId!);
  expect(createHash('sha256').update(raw).digest('hex')).toBe(entry.sha256);
  expect(raw.byteLength).toBe(entry.bytes);
  const preview = (await page.ask<Preview>('GET', `/jobs/${job.id}/recordings/${recordingId}/preview`)).body;
  expect(preview.report!.procedure).toBe('vacuum-draw');
  const samples = await fetch(`${server.address}/api/v1/jobs/${job.id}/recordings/${recordingId}/samples`);
  const { timeS, head } = decodeSamples(await samples.arrayBuffer());
  expect(timeS.at(-1)! - timeS[0]!).toBeGreaterThan(lastS - 1);
  expect(head.phases.map(({ kind }) => kind)).toContain('draw');
  expect(liveFolders(server)).toEqual([]);
  expect(await page.live(job.id)).toEqual({ live: null, left: [] });
  const { history } = (await page.ask<{ history: HistoryEntry[] }>('GET', `/jobs/${job.id}/history`)).body;
  expect(history.map(({ what, section }) => [what, section])).toContainEqual(['uploaded', 'recordings']);
});

describe('with an adapter of its own', () => {
  let car: ServedCar;
  beforeAll(async () => {
    car = await serveCar(makeCar({ layout: 'engine-vacuum', faults: [LEAK], codes: ['P0456'], incomplete: true }));
  });
  afterAll(async () => car.close());
  const port = () => ({ kind: 'adapter', address: car.address }) as const;

  test('pulled out and put back: the pause is marked and said, and the recording goes on by itself', async () => {
    const job = await page.newJob();
    const { id } = await begin(job.id, { port: port(), procedure: null });
    await page.until(job.id, ({ state, rows }) => state === 'sampling' && rows > 20);
    car.unplug();
    const away = await page.until(job.id, ({ state }) => state === 'waiting');
    expect(away.problem).toMatch(/./);
    await car.plug();
    const back = await page.until(job.id, ({ state, reconnections }) => state === 'sampling' && reconnections === 1);
    expect(back.pauses).toEqual([{ fromS: expect.any(Number), toS: expect.any(Number) }]);
    await page.until(job.id, ({ rows }) => rows > back.rows + 20);
    const kept = await page.ask<LiveKept>('POST', `/jobs/${job.id}/live/${id}/keep`, { procedure: null });
    expect(kept.status).toBe(201);
    const preview = (await page.ask<Preview>('GET', `/jobs/${job.id}/recordings/${kept.body.recordingId}/preview`))
      .body;
    expect(preview.report!.warnings.join()).toMatch(/pause|away|adapter/i);
  });

  test('without a layout there is no finding, and without a word on what is done there is none either', async () => {
    const job = await page.newJob();
    const { id, follows } = await begin(job.id, { port: port(), procedure: 'vacuum-draw' });
    expect(follows).toBe('no-car');
    const { heard } = await page.hear(job.id, ({ event, data }) => event === 'follow' && data.phases.length > 0);
    const last = heard.at(-1)!;
    expect(last.event === 'follow' && last.data.finding).toBeNull();
    expect((await page.ask('DELETE', `/jobs/${job.id}/live/${id}`)).status).toBe(204);
    const known = await page.newJob({ car: CAR });
    const second = await begin(known.id, { port: port(), procedure: null });
    const followed = await page.hear(known.id, ({ event, data }) => event === 'follow' && data.phases.length > 0);
    const told = followed.heard.at(-1)!;
    expect(told.event === 'follow' && told.data.finding).toBeNull();
    await page.ask('DELETE', `/jobs/${known.id}/live/${second.id}`);
    expect(liveFolders(server)).toEqual([]);
  });

  test('the vent is marked by hand, on the recording’s own clock, and the marks go with it', async () => {
    const job = await page.newJob({ car: CAR });
    const { id } = await begin(job.id, { port: port(), procedure: null });
    await page.until(job.id, ({ rows }) => rows > 10);
    const patch = (json: unknown) => page.ask<{ live: LiveStatus }>('PATCH', `/jobs/${job.id}/live`, json);
    expect((await patch({ procedure: 'engine-off', vent: 'shut' })).body.live).toMatchObject({
      procedure: 'engine-off',
      ventMarks: [{ fromS: expect.any(Number) }],
    });
    const marked = await page.until(job.id, ({ rows }) => rows > 60);
    const open = (await patch({ vent: 'open' })).body.live;
    expect(open.ventMarks[0]!.toS).toBeGreaterThan(open.ventMarks[0]!.fromS);
    await page.until(job.id, ({ rows }) => rows > marked.rows + 60);
    const kept = await page.ask<LiveKept>('POST', `/jobs/${job.id}/live/${id}/keep`, { procedure: 'engine-off' });
    const { recordingId } = kept.body;
    const answer = await fetch(`${server.address}/api/v1/jobs/${job.id}/recordings/${recordingId}/samples`);
    const { channels, timeS } = decodeSamples(await answer.arrayBuffer());
    const shut = [...timeS].filter((_, i) => channels.ventClosed![i] === 1);
    expect(shut[0]!).toBeGreaterThan(0);
    expect(Math.abs(shut[0]! - open.ventMarks[0]!.fromS)).toBeLessThan(0.2);
    expect(Math.abs(shut.at(-1)! - open.ventMarks[0]!.toS!)).toBeLessThan(0.2);
  });

  test('what is refused: another address, the same adapter twice, a second recording of the job, a fault that cannot be', async () => {
    const job = await page.newJob();
    const other = await page.newJob();
    const refuse = async (jobId: string, request: unknown): Promise<string> => {
      const { status, body } = await page.ask<ErrorBody>('POST', `/jobs/${jobId}/live`, request);
      return `${status} ${body.error.code}`;
    };
    for (const address of ['tcp://192.168.1.9:3333', 'tcp://example.org:80', '/dev/sda', '/etc/passwd', 'eth0', ''])
      expect([address, await refuse(job.id, { port: { kind: 'adapter', address }, procedure: null })]).toEqual([
        address,
        '400 bad-request',
      ]);
    const impossible = { kind: 'simulated', layout: 'engine-vacuum', fault: { kind: 'no such fault' } };
    expect(await refuse(job.id, { port: impossible, procedure: null })).toBe('400 bad-request');
    const { id } = await begin(job.id, { port: port(), procedure: null });
    expect(await refuse(job.id, { port: port(), procedure: null })).toBe('409 not-possible');
    expect(await refuse(other.id, { port: port(), procedure: null })).toBe('409 not-possible');
    expect((await page.ask('POST', `/jobs/${other.id}/live/${id}/keep`, { procedure: null })).status).toBe(404);
    expect((await page.ask('DELETE', `/jobs/${job.id}/live/${id}`)).status).toBe(204);
    expect((await page.ask('DELETE', `/jobs/${job.id}/live/${id}`)).status).toBe(404);
  });

  test('a capture that holds no recording is refused as one, stays, and can be kept as a file', async () => {
    const job = await page.newJob();
    const { id } = await begin(job.id, { port: { kind: 'adapter', address: 'tcp://127.0.0.1:9' }, procedure: null });
    const waiting = await page.until(job.id, ({ state }) => state === 'waiting');
    expect(waiting.problem).toContain('ECONNREFUSED');
    const keep = (as?: string) =>
      page.ask<LiveKept & ErrorBody>('POST', `/jobs/${job.id}/live/${id}/keep`, { procedure: null, ...(as && { as }) });
    expect((await keep()).status).toBe(422);
    expect((await page.live(job.id)).live).toMatchObject({ id, state: 'stopped' });
    // Two who decide at once: it is taken in once, by whichever arrives first.
    const both = await Promise.all([keep('file'), keep('file')]);
    const [kept, second] = both.toSorted((a, b) => a.status - b.status) as [(typeof both)[0], (typeof both)[0]];
    expect(kept.status).toBe(201);
    expect([404, 409]).toContain(second.status);
    expect(kept.body.recordingId).toBeNull();
    expect(kept.body.job.attachments).toHaveLength(1);
    expect(await page.live(job.id)).toEqual({ live: null, left: [] });
  });

  test('codes are cleared only by the word, after all that the car said stands in the job; permanent codes stay', async () => {
    const job = await page.newJob({ codes: [{ code: 'P0456', status: 'pending' }] });
    const { id } = await begin(job.id, { port: port(), procedure: null });
    await page.until(job.id, ({ said }) => said !== null);
    const clear = (json: unknown) => page.ask<Cleared & ErrorBody>('POST', `/jobs/${job.id}/live/codes/clear`, json);
    expect((await clear({ language: 'en' })).status).toBe(400);
    expect((await clear({ confirm: 'yes', language: 'en' })).status).toBe(400);
    expect((await page.live(job.id)).live!.said!.codes.length).toBe(2);

    const { status, body } = await clear({ confirm: 'clear', language: 'en' });
    expect(status).toBe(200);
    expect(body).toMatchObject({ cleared: true, units: ['7E8'] });
    const stands = (await page.ask<Job>('GET', `/jobs/${job.id}`)).body;
    expect(stands.codes.map(({ code, status: how }) => [code, how])).toEqual([
      ['P0456', 'pending'],
      ['P0456', 'stored'],
      ['P0456', 'permanent'],
    ]);
    expect(stands.codes[1]!.freezeFrame!.map(({ name }) => name)).toContain('engine speed');
    expect(stands.notes).toHaveLength(2);
    expect(stands.notes[0]!.text).toMatch(
      /P0456 stored[\s\S]*evaporative system[\s\S]*Warm-ups since clear: 40[\s\S]*EVAPCOMP 16/,
    );
    expect(stands.notes[1]!.text).toMatch(/Permanent codes stay/);
    const [file] = stands.attachments;
    const bytes = await fetch(`${server.address}/api/v1/jobs/${job.id}/attachments/${file!.id}`);
    // Service $03 was answered in it, and service $04 had not been asked yet.
    const said = await bytes.text();
    expect(said).toContain('7E8#0443');
    expect(said).not.toMatch(/7DF#0104/);

    const after = await page.until(job.id, ({ clearedAt }) => clearedAt !== null);
    expect(after.said!.codes).toEqual([{ code: 'P0456', status: 'permanent', unit: '7E8' }]);
    expect(after.said!.status).toMatchObject({ warmUpsSinceClear: 0, inUse: { EVAPCOMP: 16 } });
    expect(after.said!.status.sinceClear!.monitors.filter((m) => m.supported && !m.complete).length).toBeGreaterThan(1);
    const events = await server.parts.store.securityLog.read({ limit: 5 });
    expect(events[0]).toMatchObject({ kind: 'codes-cleared', detail: { job: job.number, confirmed: ['7E8'] } });
    await page.ask('DELETE', `/jobs/${job.id}/live/${id}`);
  });

  test('the program is killed in the middle: the next one offers what was recorded, and it goes into the job', async () => {
    const [folder, databaseUrl] = [database.folder(), await database.freshDatabase()];
    const script = `
      const { startServer } = await import(${JSON.stringify(join(process.cwd(), 'src/server/start-server.ts'))});
      const server = await startServer({ dataFolder: ${JSON.stringify(folder)}, databaseUrl: ${JSON.stringify(databaseUrl)},
        port: 0, pagesFolder: '/nowhere', program: 'killed', version: '0' });
      process.stdout.write(server.address + '\\n');`;
    const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const address = await new Promise<string>((resolve) => {
      child.stdout.once('data', (bytes: Buffer) => resolve(bytes.toString().trim()));
    });
    const doomed = await new LivePage(address).open();
    const job = await doomed.newJob({ car: CAR });
    await doomed.ask('POST', `/jobs/${job.id}/live`, { port: port(), procedure: 'vacuum-draw' });
    const told = await doomed.until(job.id, ({ rows }) => rows > 60);
    child.kill('SIGKILL');
    await new Promise((resolve) => void child.once('close', resolve));

    const next = await start(folder, databaseUrl);
    try {
      const reopened = await new LivePage(next.address).open();
      const { live, left } = await reopened.live(job.id);
      expect(live).toBeNull();
      expect(left).toMatchObject([{ id: told.id, procedure: 'vacuum-draw', port: port() }]);
      expect(left[0]!.bytes).toBeGreaterThanOrEqual(told.bytes);
      const path = `/jobs/${job.id}/live/${told.id}`;
      const kept = await reopened.ask<LiveKept>('POST', `${path}/keep`, { procedure: 'vacuum-draw' });
      expect(kept.status).toBe(201);
      const { recordingId } = kept.body;
      const preview = await reopened.ask<Preview>('GET', `/jobs/${job.id}/recordings/${recordingId}/preview`);
      // Every row that the page had been told of is there.
      expect(preview.body.report!.samples).toBeGreaterThanOrEqual(60);
      expect(existsSync(join(folder, 'live', told.id))).toBe(false);
      expect(await reopened.live(job.id)).toEqual({ live: null, left: [] });
    } finally {
      await next.close();
    }
  });

  test('the program is ended as usual: what runs is left to be decided on, and can be thrown away', async () => {
    const [folder, databaseUrl] = [database.folder(), await database.freshDatabase()];
    const first = await start(folder, databaseUrl);
    const before = await new LivePage(first.address).open();
    const job = await before.newJob();
    await before.ask('POST', `/jobs/${job.id}/live`, { port: port(), procedure: null });
    await before.until(job.id, ({ rows }) => rows > 10);
    await first.close();
    const second = await start(folder, databaseUrl);
    try {
      const after = await new LivePage(second.address).open();
      const [left] = (await after.live(job.id)).left;
      expect((await after.ask('DELETE', `/jobs/${job.id}/live/${left!.id}`)).status).toBe(204);
      expect(await after.live(job.id)).toEqual({ live: null, left: [] });
    } finally {
      await second.close();
    }
  });
});
