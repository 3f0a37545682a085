/**
 * A server of the pages for tests of the pages alone: the contract's answers from memory, without a store.
 * Values are checked by the contract's own schemas, so that a page cannot send what the true server refuses.
 */
import { createHash, randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isDeepStrictEqual } from 'node:util';
import type { HistoryEntry, Job, JobSummary, SectionName } from '../../src/jobs/record/job.ts';
import { waitsFor } from '../../src/jobs/record/waits-for.ts';
import { INSPECTION_RULES } from '../../src/readiness/inspection-rules.ts';
import type { Session } from '../../src/server/contract/accounts.ts';
import type { ErrorCode } from '../../src/server/contract/error.ts';
import { jobChangeSchema, newJobSchema } from '../../src/server/contract/jobs.ts';
import { FIRST_SETTINGS, type Settings, settingsSchema } from '../../src/server/contract/settings.ts';
import { emptyJob } from './pages-sample-job.ts';

const WEB = fileURLToPath(new URL('../../dist/web/', import.meta.url));
const WORKER = /^\/assets\/([\w-]+-)?worker-[\w-]+\.js$/;
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
};
/** As strict as the true server: no inline script or style, nothing from elsewhere. */
const POLICY =
  "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; object-src 'none'; base-uri 'none'";

export interface FakeServer {
  readonly address: string;
  readonly jobs: Map<string, Job>;
  session: Session;
  settings: Settings;
  /** Changes a job as another window would, and tells whoever listens. */
  changeElsewhere(id: string, section: SectionName, value: unknown): void;
  stop(): Promise<void>;
}

export const FREE_SESSION: Session = { user: null, needsLogin: false, needsFirst: false, role: 'owner', csrf: 'token' };

export interface FakeServerOptions {
  /** Absent: any free one. */
  readonly port?: number;
  /**
   * The workers of the browser are empty: the drawing is never computed and no next check planned. They take more than
   * half of what opening a sheet costs, and go on for seconds; for tests of what is beside them.
   */
  readonly areWorkersSilent?: boolean;
}

export async function startFakeServer(
  first: readonly Job[],
  { port = 0, areWorkersSilent = false }: FakeServerOptions = {},
): Promise<FakeServer> {
  const jobs = new Map(first.map((job) => [job.id, job]));
  const histories = new Map<string, HistoryEntry[]>();
  const listeners = new Map<string, Set<ServerResponse>>();
  const state = { session: FREE_SESSION, settings: FIRST_SETTINGS };

  const write = (
    job: Job,
    what: HistoryEntry['what'],
    section: string | null,
    before: unknown,
    after: unknown,
  ): Job => {
    const next: Job = { ...job, version: job.version + 1, changedAt: new Date().toISOString() };
    jobs.set(job.id, next);
    const entry: HistoryEntry = {
      version: next.version,
      at: next.changedAt,
      by: 'tester',
      what,
      section,
      before,
      after,
    };
    histories.set(job.id, [...(histories.get(job.id) ?? []), entry]);
    for (const out of listeners.get(job.id) ?? []) out.write(`event: job\ndata: {"version":${next.version}}\n\n`);
    return next;
  };

  const api = async (request: IncomingMessage, answer: ServerResponse, url: URL): Promise<void> => {
    const send = (status: number, body: unknown): void => {
      answer.writeHead(status, { 'content-type': 'application/json' });
      answer.end(JSON.stringify(body));
    };
    const refuse = (status: number, code: ErrorCode, message: string, more: object = {}): void =>
      send(status, { error: { code, message }, ...more });
    const path = url.pathname.slice('/api/v1'.length);
    const method = request.method ?? 'GET';
    const bytes = method === 'GET' ? Buffer.alloc(0) : await bodyOf(request);
    if (method !== 'GET' && request.headers['x-vaporwright-csrf'] !== state.session.csrf) {
      return refuse(403, 'stale-page', 'no token');
    }
    const isJson = (request.headers['content-type'] ?? '').includes('json');
    const body: unknown = isJson ? JSON.parse(bytes.toString()) : undefined;
    if (path === '/session') return send(200, state.session);
    if (path === '/settings') {
      if (method === 'PUT') state.settings = settingsSchema.parse(body);
      return send(200, state.settings);
    }
    if (path === '/demo') {
      const demo = [...jobs.values()].filter((job) => job.demo);
      for (const job of demo) jobs.delete(job.id);
      return send(200, { removed: demo.length });
    }
    if (path === '/jobs' && method === 'GET') {
      const rows = [...jobs.values()]
        .filter((job) => matches(job, url.searchParams))
        .sort((a, b) => b.changedAt.localeCompare(a.changedAt));
      return send(200, { jobs: rows.map(summaryOf) });
    }
    if (path === '/jobs') {
      const job: Job = { ...emptyJob(randomUUID(), jobs.size + 1), ...newJobSchema.parse(body).sections };
      jobs.set(job.id, job);
      return send(201, job);
    }
    if (path.startsWith('/shared/')) {
      const [job] = jobs.values();
      if (path.endsWith('/inspection-rule')) return send(200, INSPECTION_RULES[0]);
      if (path.includes('/recordings/')) return refuse(404, 'not-found', 'no recording');
      return path.endsWith('gone') || job === undefined ? refuse(404, 'not-found', 'no link') : send(200, job);
    }
    const [, id, rest = ''] = /^\/jobs\/([^/]+)\/?(.*)$/.exec(path) ?? [];
    const job = jobs.get(id ?? '');
    if (job === undefined) return refuse(404, 'not-found', `There is no ${path}.`);
    if (rest === 'events') {
      answer.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
      answer.write(': hello\n\n');
      const all = listeners.get(job.id) ?? new Set();
      listeners.set(job.id, all.add(answer));
      request.on('close', () => all.delete(answer));
      return;
    }
    if (rest === '' && method === 'GET') return send(200, job);
    if (rest === 'history') return send(200, { history: histories.get(job.id) ?? [] });
    if (rest === 'work') return send(200, { work: [] });
    if (rest === '' && method === 'PATCH') {
      const asked = jobChangeSchema.safeParse(body);
      if (!asked.success) return refuse(400, 'bad-request', asked.error.message);
      if (asked.data.version !== job.version) {
        return refuse(409, 'changed-meanwhile', 'changed', { current: job });
      }
      const { section, value } = asked.data.change;
      return send(200, write({ ...job, [section]: value }, 'changed', section, job[section], value));
    }
    if (rest === 'undo') {
      const last = (histories.get(job.id) ?? []).findLast((entry) => entry.what === 'changed');
      if (last === undefined) return refuse(409, 'not-possible', 'nothing to take back');
      const section = last.section as SectionName;
      return send(200, write({ ...job, [section]: last.before }, 'undone', section, job[section], last.before));
    }
    if (rest === 'closed') {
      const { closed } = body as { closed: boolean };
      return send(200, write({ ...job, closed }, closed ? 'closed' : 'reopened', null, job.closed, closed));
    }
    if (rest === 'recordings') {
      const form = bytes.toString('latin1');
      const fileName = /name="file"; filename="([^"]+)"/.exec(form)?.[1] ?? 'recording.csv';
      const taken = /name="taken"\r\n\r\n(after-repair)/.test(form) ? 'after-repair' : 'before-repair';
      const entry: Job['recordings'][number] = {
        id: randomUUID(),
        label: fileName,
        fileName,
        sha256: createHash('sha256').update(bytes).digest('hex'),
        bytes: bytes.length,
        receivedAt: new Date().toISOString(),
        useInFinding: true,
        taken,
      };
      const recordings = [...job.recordings, entry];
      const next = write({ ...job, recordings }, 'uploaded', 'recordings', job.recordings, recordings);
      return send(201, { job: next, recordingId: entry.id });
    }
    return refuse(404, 'not-found', `There is no ${path}.`);
  };

  const server: Server = createServer((request, answer) => {
    const url = new URL(request.url ?? '/', 'http://localhost');
    if (url.pathname.startsWith('/api/')) {
      api(request, answer, url).catch((error: unknown) => {
        answer.writeHead(500, { 'content-type': 'application/json' });
        answer.end(JSON.stringify({ error: { code: 'internal', message: String(error) } }));
      });
    } else if (areWorkersSilent && WORKER.test(url.pathname)) {
      answer.writeHead(200, { 'content-type': 'text/javascript' }).end();
    } else serveFile(url.pathname, answer);
  });
  await new Promise<void>((done) => server.listen(port, '127.0.0.1', done));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    jobs,
    get session() {
      return state.session;
    },
    set session(next) {
      state.session = next;
    },
    get settings() {
      return state.settings;
    },
    set settings(next) {
      state.settings = next;
    },
    changeElsewhere: (id, section, value) => {
      const job = jobs.get(id);
      if (job === undefined) throw new Error(`no job ${id}`);
      if (isDeepStrictEqual(job[section], value)) return;
      write({ ...job, [section]: value } as Job, 'changed', section, job[section], value);
    },
    stop: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

async function bodyOf(request: IncomingMessage): Promise<Buffer> {
  const pieces: Buffer[] = [];
  for await (const piece of request) pieces.push(piece as Buffer);
  return Buffer.concat(pieces);
}

function serveFile(path: string, answer: ServerResponse): void {
  const wanted = normalize(path).replace(/^([/\\.])+/, '');
  const headers = { 'content-security-policy': POLICY, 'cache-control': 'no-cache' };
  try {
    const bytes = readFileSync(join(WEB, wanted === '' || extname(wanted) === '' ? 'index.html' : wanted));
    answer.writeHead(200, {
      ...headers,
      'content-type': TYPES[extname(wanted) || '.html'] ?? 'application/octet-stream',
    });
    answer.end(bytes);
  } catch {
    answer.writeHead(404, headers).end();
  }
}

function summaryOf(job: Job): JobSummary {
  const finding = job.findings.at(-1)?.sheet.finding;
  const cause = finding?.causes[0];
  return {
    id: job.id,
    number: job.number,
    vehicle: job.vehicle.name,
    ...(job.vehicle.registration === undefined ? {} : { registration: job.vehicle.registration }),
    complaint: job.complaint.words.slice(0, 200),
    codes: job.codes.map(({ code }) => code),
    waitsFor: waitsFor(job),
    finding:
      finding === undefined || cause === undefined
        ? null
        : { verdict: finding.verdict, cause: cause.id, probability: cause.probability },
    changedAt: job.changedAt,
    demo: job.demo,
    closed: job.closed,
  };
}

function matches(job: Job, query: URLSearchParams): boolean {
  const words = (query.get('words') ?? '').toLowerCase().split(/\s+/);
  const text = [job.number, job.vehicle.name, job.complaint.words, ...job.codes.map((c) => c.code)]
    .join(' ')
    .toLowerCase();
  const wished = query.get('waitsFor');
  return (
    words.every((word) => text.includes(word)) &&
    (wished === null || wished === waitsFor(job)) &&
    (query.get('closed') !== 'false' || !job.closed)
  );
}
