/** Over a real socket: what an injected request does not show. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { Job } from '../../src/jobs/record/job.ts';
import { API, TOKEN_HEADER } from '../../src/server/contract/paths.ts';
import { answers, readRunning } from '../../src/server/running-file.ts';
import { type RunningServer, startServer } from '../../src/server/start-server.ts';
import { type TestServer, testServer } from '../store/test-server.ts';
import { CAR, LEAK_CSV, PROGRAM } from './bench.ts';

let database: TestServer;
let server: RunningServer;
let cookie = '';
let token = '';
const faults: unknown[] = [];
const SCRIPT = `console.log(${JSON.stringify('x'.repeat(4000))})`;

beforeAll(async () => {
  database = await testServer();
  const pagesFolder = database.folder();
  mkdirSync(join(pagesFolder, 'assets'));
  writeFileSync(join(pagesFolder, 'index.html'), '<!doctype html><title>pages</title>');
  writeFileSync(join(pagesFolder, 'assets', 'index-abcd1234.js'), SCRIPT);
  writeFileSync(join(pagesFolder, 'assets', 'index-abcd1234.js.br'), brotliCompressSync(SCRIPT));
  writeFileSync(join(pagesFolder, 'sw.js'), '// worker');
  server = await startServer({
    dataFolder: database.folder(),
    databaseUrl: await database.freshDatabase(),
    port: 0,
    pagesFolder,
    program: PROGRAM,
    version: '0.0.0-test',
    onFault: (error) => faults.push(error),
  });
  const answer = await fetch(`${server.address}${API}/session`);
  cookie = String(answer.headers.get('set-cookie')).split(';')[0] ?? '';
  token = ((await answer.json()) as { csrf: string }).csrf;
});
afterAll(async () => {
  await server?.close();
  await database?.leave();
});
afterEach(() => expect(faults).toEqual([]));

const ask = (path: string, init: RequestInit = {}) =>
  fetch(`${server.address}${path}`, { ...init, headers: { cookie, [TOKEN_HEADER]: token, ...init.headers } });
const post = (path: string, json: unknown, method = 'POST') =>
  ask(`${API}${path}`, { method, body: JSON.stringify(json), headers: { 'content-type': 'application/json' } });

/** What comes back on a bare connection. */
const bare = (request: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const socket = connect(Number(new URL(server.address).port), '127.0.0.1', () => socket.write(request));
    let text = '';
    socket.on('data', (piece) => {
      text += piece.toString('latin1');
    });
    socket.on('close', () => resolve(text));
    socket.on('error', reject);
  });

test('the address and the process stand in a file for this user alone', async () => {
  const running = readRunning(server.dataFolder);
  expect(running?.pid).toBe(process.pid);
  expect(running !== undefined && (await answers(running))).toBe(true);
  expect(await answers({ address: 'http://127.0.0.1:9', pid: 1, startedAt: '' })).toBe(false);
});

test('a request that names no host, or a wrong one, gets nothing', async () => {
  expect(await bare(`GET ${API}/jobs HTTP/1.0\r\n\r\n`)).toMatch(/^HTTP\/1\.1 403/);
  expect(await bare(`GET ${API}/jobs HTTP/1.1\r\nHost: evil.example\r\nConnection: close\r\n\r\n`)).toMatch(
    /^HTTP\/1\.1 403/,
  );
  expect(await bare(`GET /../../etc/passwd HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`)).not.toContain(
    'root:',
  );
  expect(
    await bare(`GET /%2e%2e/%2e%2e/etc/passwd HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`),
  ).not.toContain('root:');
});

test('pages: one for every address of theirs, files packed and kept, the worker’s reach', async () => {
  for (const path of ['/', '/jobs/17', '/system', '/shared/abc', '/sign-in']) {
    const answer = await ask(path);
    expect([path, answer.status, await answer.text()]).toEqual([path, 200, expect.stringContaining('<title>pages')]);
    expect(answer.headers.get('cache-control')).toBe('no-cache');
    expect(answer.headers.get('content-security-policy')).toContain("script-src 'self'");
  }
  const script = await ask('/assets/index-abcd1234.js', { headers: { 'accept-encoding': 'br' } });
  expect(script.headers.get('content-encoding')).toBe('br');
  expect(script.headers.get('cache-control')).toContain('immutable');
  expect(await script.text()).toBe(SCRIPT);
  const worker = await ask('/sw.js');
  expect(worker.headers.get('cache-control')).toBe('no-cache');
  expect(worker.headers.get('service-worker-allowed')).toBe('/');
  expect((await ask('/assets/gone-abcd1234.js')).status).toBe(404);
  expect((await ask('/', { method: 'POST' })).status).toBe(404);
});

test('a large recording streams in from a slow sender', async () => {
  const job = (await (await post('/jobs', { sections: { car: CAR } })).json()) as Job;
  const border = 'border';
  const head = `--${border}\r\ncontent-disposition: form-data; name="file"; filename="slow.csv"\r\n\r\n`;
  const body = Buffer.from(`${head}${LEAK_CSV}\r\n--${border}--\r\n`);
  const stream = new ReadableStream({
    async start(controller) {
      for (let at = 0; at < body.length; at += 20_000) {
        controller.enqueue(body.subarray(at, at + 20_000));
        await new Promise((resolve) => setTimeout(resolve, 5));
      }
      controller.close();
    },
  });
  const answer = await ask(`${API}/jobs/${job.id}/recordings`, {
    method: 'POST',
    body: stream,
    duplex: 'half',
    headers: { 'content-type': `multipart/form-data; boundary=${border}` },
  } as RequestInit);
  expect(answer.status).toBe(201);
});

test('a second page is told of a change at once', async () => {
  const job = (await (await post('/jobs', {})).json()) as Job;
  const stop = new AbortController();
  const events = await ask(`${API}/jobs/${job.id}/events`, { signal: stop.signal });
  expect(events.headers.get('content-type')).toContain('text/event-stream');
  expect(events.headers.get('x-content-type-options')).toBe('nosniff');
  const reader = (events.body as ReadableStream<Uint8Array>).getReader();
  let text = '';
  const until = async (part: string) => {
    while (!text.includes(part)) {
      const { value, done } = await reader.read();
      if (done) throw new Error(`ended without "${part}": ${text}`);
      text += new TextDecoder().decode(value);
    }
  };
  await until(`event: job\ndata: {"version":${job.version}}`);
  const change = { section: 'vehicle', value: { name: 'changed elsewhere' } };
  await post(`/jobs/${job.id}`, { version: job.version, change }, 'PATCH');
  await until(`event: job\ndata: {"version":${job.version + 1}}`);
  stop.abort();
});

test('closing ends streams and waiting connections and takes the file away', async () => {
  const other = await startServer({
    dataFolder: database.folder(),
    databaseUrl: await database.freshDatabase(),
    port: 0,
    pagesFolder: '/nowhere',
    program: PROGRAM,
    version: '0.0.0-test',
  });
  const first = await fetch(`${other.address}${API}/session`);
  const headers = {
    cookie: String(first.headers.get('set-cookie')).split(';')[0] ?? '',
    [TOKEN_HEADER]: ((await first.json()) as { csrf: string }).csrf,
    'content-type': 'application/json',
  };
  const job = (await (
    await fetch(`${other.address}${API}/jobs`, { method: 'POST', headers, body: '{}' })
  ).json()) as Job;
  const events = await fetch(`${other.address}${API}/jobs/${job.id}/events`, { headers });
  expect((await fetch(`${other.address}/`)).status).toBe(503);
  await other.close();
  await expect(events.text()).resolves.toContain('event: job');
  await expect(fetch(`${other.address}${API}/session`)).rejects.toThrow();
  expect(() => readFileSync(join(other.dataFolder, 'server.json'))).toThrow();
});

test('a data folder that lacks what the database names is told of at the start', async () => {
  const databaseUrl = await database.freshDatabase();
  const options = { databaseUrl, port: 0, pagesFolder: '/nowhere', program: PROGRAM, version: '0.0.0-test' };
  const place = database.folder();
  const first = await startServer({ ...options, dataFolder: place });
  expect(first.missingFiles).toBe(0);
  const job = await first.parts.store.jobs.create({ name: 'Anna' }, { sections: {} });
  const kept = await first.parts.store.files.keep(
    (async function* () {
      yield Buffer.from('time_s,tank_pressure_pa\n0,0\n');
    })(),
  );
  const entry = { label: 'a', fileName: 'a.csv', receivedAt: '2026-01-02T03:04:05.000Z', useInFinding: true } as const;
  const recording = { id: '0f3c1f5e-6d7a-4b57-9a53-0d6a1d9b8a10', taken: 'before-repair', ...entry, ...kept } as const;
  await first.parts.store.jobs.addRecording(job.id, { name: 'Anna' }, recording);
  await first.close();
  const elsewhere = await startServer({ ...options, dataFolder: database.folder() });
  expect(elsewhere.missingFiles).toBe(1);
  await elsewhere.close();
  const again = await startServer({ ...options, dataFolder: place });
  expect(again.missingFiles).toBe(0);
  await again.close();
});
