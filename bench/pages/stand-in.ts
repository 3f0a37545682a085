/** Stands in for the server: the built pages and one job with one recording, its samples ready to be sent. */
import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize } from 'node:path';
import type { Job } from '../../src/jobs/record/job.ts';
import { EMPTY_MONITOR } from '../../src/jobs/record/monitor.ts';
import { API } from '../../src/server/contract/paths.ts';
import { FIRST_SETTINGS } from '../../src/server/contract/settings.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
};

const MOMENT = '2026-01-05T08:00:00.000Z';
const ID = '00000000-0000-4000-8000-000000000001';
const RECORDING_ID = '00000000-0000-4000-8000-000000000002';

const job: Job = {
  schema: 'vaporwright-job-1',
  id: ID,
  number: 1,
  version: 1,
  createdAt: MOMENT,
  changedAt: MOMENT,
  demo: true,
  closed: false,
  complaint: { words: 'Long recording', types: [] },
  codes: [],
  vehicle: { name: 'Invented car' },
  car: null,
  recordings: [
    {
      id: RECORDING_ID,
      label: 'long.csv',
      fileName: 'long.csv',
      sha256: '0'.repeat(64),
      bytes: 1,
      receivedAt: MOMENT,
      useInFinding: true,
      taken: 'before-repair',
    },
  ],
  checks: [],
  repairs: [],
  proof: null,
  monitor: EMPTY_MONITOR,
  attachments: [],
  notes: [],
  findings: [],
  handOvers: [],
};

const ANSWERS: Readonly<Record<string, unknown>> = {
  '/session': { user: null, role: 'owner', needsLogin: false, needsFirst: false, csrf: 'x' },
  '/settings': FIRST_SETTINGS,
  [`/jobs/${ID}`]: job,
  [`/jobs/${ID}/work`]: { work: [] },
  [`/jobs/${ID}/history`]: { history: [] },
  [`/jobs/${ID}/recordings/${RECORDING_ID}/preview`]: {
    header: [],
    rows: [],
    mapping: null,
    guessed: null,
    isGiven: false,
    report: null,
    problem: null,
  },
};
const SAMPLES = `/jobs/${ID}/recordings/${RECORDING_ID}/samples`;

export interface StandIn {
  readonly jobPage: string;
  close(): void;
}

export function standIn(pagesFolder: string, samples: Uint8Array): Promise<StandIn> {
  const server: Server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    if (pathname.startsWith(API)) {
      const path = pathname.slice(API.length);
      if (path === SAMPLES) {
        response.writeHead(200, { 'content-type': 'application/octet-stream', 'content-length': samples.byteLength });
        response.end(samples);
        return;
      }
      const answer = ANSWERS[path];
      response.writeHead(answer === undefined ? 404 : 200, { 'content-type': 'application/json' });
      response.end(JSON.stringify(answer ?? { error: { code: 'not-found', message: path } }));
      return;
    }
    const isFile = extname(pathname) !== '';
    const path = join(pagesFolder, isFile ? normalize(pathname) : 'index.html');
    try {
      const bytes = await readFile(path);
      response.writeHead(200, { 'content-type': TYPES[extname(path)] ?? 'application/octet-stream' });
      response.end(bytes);
    } catch {
      response.writeHead(404).end();
    }
  });
  return new Promise((resolve, reject) => {
    server.on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      if (address === null || typeof address === 'string') return reject(new Error('no port'));
      resolve({
        jobPage: `http://127.0.0.1:${address.port}/jobs/${ID}`,
        close: () => {
          server.closeAllConnections();
          server.close();
        },
      });
    });
  });
}
