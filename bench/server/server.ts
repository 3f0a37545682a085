/**
 * The server under load on loopback: readers and writers for a minute while one finding after another runs, then a
 * recording of a million samples opened. The server is the program itself in a process of its own.
 *
 *   npx tsx bench/server/server.ts [seconds] [readers] [writers]
 *
 * A reader asks for something, looks at it for 0 to 400 ms, and asks for the next thing: far more than a person does.
 */
import { readFileSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { setTimeout as wait } from 'node:timers/promises';
import type { Job, JobSummary } from '../../src/jobs/record/job.ts';
import { decodeSamples } from '../../src/server/contract/samples.ts';
import type { Work } from '../../src/server/contract/work.ts';
import { FormBody, Page } from './client.ts';
import { longRecording } from './long-recording.ts';
import { startProgram } from './start.ts';

const SECONDS = Number(process.argv[2] ?? 60);
const READERS = Number(process.argv[3] ?? 50);
const WRITERS = Number(process.argv[4] ?? 5);
const LOOKS_MS = 400;
const BAR_P99_MS = 100;
const BAR_OPEN_S = 2;
const LONG_SAMPLES = 1_000_000;

const example = (name: string) => readFileSync(new URL(`../../examples/${name}`, import.meta.url));
const CAR: unknown = JSON.parse(example('invented-estate.car.json').toString());
const LEAK = new FormBody('leak.csv', example('leak-self-test.csv'));

const times = new Map<string, number[]>();
let errors = 0;
let firstError = '';

function note(what: string, ms: number, status: number, wanted: number, body: Buffer): void {
  const all = times.get(what) ?? [];
  all.push(ms);
  times.set(what, all);
  if (status === wanted) return;
  errors++;
  firstError ||= `${what}: ${status} ${body.toString().slice(0, 200)}`;
}

const quantile = (values: readonly number[], q: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(q * values.length))] ?? Number.NaN;

async function read(page: Page, until: number): Promise<void> {
  await wait(Math.random() * LOOKS_MS);
  while (performance.now() < until) {
    const list = await page.ask('GET', '/jobs?limit=50');
    note('list', list.ms, list.status, 200, list.body);
    const { jobs } = JSON.parse(list.body.toString()) as { jobs: JobSummary[] };
    const shown = jobs[Math.floor(Math.random() * jobs.length)];
    await wait(Math.random() * LOOKS_MS);
    if (shown === undefined) continue;
    const opened = await page.ask('GET', `/jobs/${shown.id}`);
    note('job', opened.ms, opened.status, 200, opened.body);
    await wait(Math.random() * LOOKS_MS);
    const recording = (JSON.parse(opened.body.toString()) as Job).recordings[0];
    if (recording === undefined) continue;
    for (const what of ['preview', 'samples']) {
      const { ms, status, body } = await page.ask('GET', `/jobs/${shown.id}/recordings/${recording.id}/${what}`);
      note(what, ms, status, 200, body);
      await wait(Math.random() * LOOKS_MS);
    }
  }
}

async function write(page: Page, until: number): Promise<void> {
  let job = await page.json<Job>('POST', '/jobs', { sections: { car: CAR } });
  const started = performance.now();
  for (let i = 0; performance.now() < until; i++) {
    const change = { section: 'vehicle', value: { name: `car ${i}`, odometerKm: 1000 + i } };
    const { ms, status, body } = await page.ask('PATCH', `/jobs/${job.id}`, { version: job.version, change });
    note('change', ms, status, 200, body);
    if (status === 200) job = JSON.parse(body.toString()) as Job;
    await wait(Math.random() * LOOKS_MS);
  }
  if (job.vehicle.name === '' && performance.now() - started > 1000) throw new Error('nothing was written');
}

/** One finding after the other, as long as the load lasts. Returns how many were made. */
async function keepFinding(page: Page, until: number): Promise<number> {
  const job = await page.json<Job>('POST', '/jobs', { sections: { car: CAR } });
  await page.json('POST', `/jobs/${job.id}/recordings`, LEAK);
  let made = 0;
  while (performance.now() < until) {
    let { work } = await page.json<{ work: Work }>('POST', `/jobs/${job.id}/findings`);
    while ((work.state === 'waiting' || work.state === 'running') && performance.now() < until) {
      await wait(200);
      ({ work } = await page.json<{ work: Work }>('GET', `/work/${work.id}`));
    }
    if (work.state === 'done') made++;
    else if (performance.now() >= until) await page.json('DELETE', `/work/${work.id}`);
    else throw new Error(`the finding ended as ${work.state}: ${work.words}`);
  }
  return made;
}

interface Opening {
  readonly parsedS: number;
  readonly openS: number;
  readonly samples: number;
}

/** Sent and read once, then opened as a page opens it: job, preview, samples, all of them decoded. */
async function openLong(page: Page): Promise<Opening> {
  const job = await page.json<Job>('POST', '/jobs', { sections: { car: CAR } });
  const sent = await page.ask(
    'POST',
    `/jobs/${job.id}/recordings`,
    new FormBody('long.csv', longRecording(LONG_SAMPLES)),
  );
  const { recordingId } = JSON.parse(sent.body.toString()) as { recordingId: string };
  const from = performance.now();
  await page.json('GET', `/jobs/${job.id}`);
  await page.json('GET', `/jobs/${job.id}/recordings/${recordingId}/preview`);
  const { body } = await page.ask('GET', `/jobs/${job.id}/recordings/${recordingId}/samples`);
  const { head } = decodeSamples(new Uint8Array(body).buffer);
  return { parsedS: sent.ms / 1000, openS: (performance.now() - from) / 1000, samples: head.samples };
}

const loadBefore = loadavg()[0] ?? 0;
const program = await startProgram();
try {
  const pages = await Promise.all(Array.from({ length: READERS + WRITERS + 1 }, () => Page.open(program.address)));
  // Each recording is read once before: what is measured is the shop at work, not its first minute.
  const first = pages[0]!;
  for (const { id } of (await first.json<{ jobs: JobSummary[] }>('GET', '/jobs?limit=200')).jobs) {
    const job = await first.json<Job>('GET', `/jobs/${id}`);
    for (const recording of job.recordings) await first.json('GET', `/jobs/${id}/recordings/${recording.id}/preview`);
  }
  const until = performance.now() + SECONDS * 1000;
  const [findings] = await Promise.all([
    keepFinding(pages.at(-1)!, until),
    ...pages.slice(0, READERS).map((page) => read(page, until)),
    ...pages.slice(READERS, READERS + WRITERS).map((page) => write(page, until)),
  ]);
  const opening = await openLong(first);
  for (const page of pages) page.close();

  const all = [...times.values()].flat();
  console.log(`${READERS} readers, ${WRITERS} writers, ${SECONDS} s, ${findings} findings made meanwhile\n`);
  console.log(
    `${'request'.padEnd(10)}${['count', 'median', 'p95', 'p99', 'most'].map((name) => name.padStart(10)).join('')}  (ms)`,
  );
  for (const [what, values] of [...times, ['all', all] as const]) {
    const cells = [0.5, 0.95, 0.99, 1].map((q) => quantile(values, q).toFixed(1).padStart(10));
    console.log(`${what.padEnd(10)}${String(values.length).padStart(10)}${cells.join('')}`);
  }
  const p99Ms = quantile(all, 0.99);
  console.log(`\nerrors: ${errors}${errors > 0 ? ` (${firstError})` : ''}`);
  console.log(
    `p99 of all: ${p99Ms.toFixed(1)} ms (bar: ${BAR_P99_MS} ms, ${p99Ms < BAR_P99_MS ? 'held' : 'NOT held'})`,
  );
  console.log(
    `${opening.samples} samples: sent and read in ${opening.parsedS.toFixed(2)} s, then opened in ${opening.openS.toFixed(2)} s (bar: ${BAR_OPEN_S} s, ${opening.openS < BAR_OPEN_S ? 'held' : 'NOT held'})`,
  );
  console.log(
    `load of the machine before: ${loadBefore.toFixed(1)} on ${availableParallelism()} cores (what else runs counts against the server)`,
  );
  console.log(
    JSON.stringify({
      bench: 'server',
      seconds: SECONDS,
      readers: READERS,
      writers: WRITERS,
      loadBefore,
      cores: availableParallelism(),
      findings,
      requests: all.length,
      errors,
      medianMs: quantile(all, 0.5),
      p99Ms,
      openMillionS: opening.openS,
      readMillionS: opening.parsedS,
    }),
  );
  if (errors > 0) process.exitCode = 1;
} finally {
  await program.end();
}
