/** The demo shop: what ships is what the simulator and this very program make, and the store takes it. */

import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { findingOf, handOverDocumentOf } from '../../scripts/demo-findings.ts';
import { PROGRAM } from '../../src/cli/version.ts';
import { type BuiltJob, buildJob, toldJob } from '../../src/jobs/demo/build-job.ts';
import { recordingFile, shippedFile } from '../../src/jobs/demo/demo-files.ts';
import { addDemoShop, addDemoShopOnFirstStart, DEMO_FOLDER, DEMO_JOBS } from '../../src/jobs/demo/demo-shop.ts';
import { demoRecordingCsv } from '../../src/jobs/demo/recording-csv.ts';
import { DEMO_RECORDING_NAMES } from '../../src/jobs/demo/scenarios.ts';
import { canonicalJson } from '../../src/jobs/record/finding-inputs.ts';
import { jobSchema } from '../../src/jobs/record/job.ts';
import { readRecordingCsv } from '../../src/recording/read-csv.ts';
import { LAYOUTS } from '../../src/system/car.ts';
import { type TestServer, testServer } from '../store/test-server.ts';
import { wordsOf } from './pdf-words.ts';

const folder = join(fileURLToPath(new URL('../..', import.meta.url)), DEMO_FOLDER);
const told = (key: string) => {
  const found = DEMO_JOBS.find((job) => job.key === key);
  if (found === undefined) throw new Error(`There is no demo job "${key}".`);
  return found;
};
const ADVICE = 'What ships differs from what this program makes: run "npx tsx scripts/make-demo-shop.ts".';

let built: readonly BuiltJob[] = [];
beforeAll(async () => {
  built = await Promise.all(DEMO_JOBS.map((job, i) => buildJob(folder, job, i + 1)));
});

describe('the jobs', () => {
  test('are valid, marked as demo, and invented to the label', () => {
    for (const { job } of built) {
      expect(jobSchema.parse(job)).toEqual(job);
      expect(job.demo).toBe(true);
      expect(job.vehicle.registration).toMatch(/^DEMO \d+$/);
      if (job.car !== null) {
        expect(job.car.demo).toBe(true);
        expect(job.car.label).toContain('invented');
      }
    }
    const ids = built.flatMap(({ job }) => [
      job.id,
      ...job.recordings.map(({ id }) => id),
      ...job.findings.map(({ id }) => id),
    ]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('are eight to ten, over all layouts', () => {
    expect(built.length).toBeGreaterThanOrEqual(8);
    expect(built.length).toBeLessThanOrEqual(10);
    expect([...new Set(built.flatMap(({ job }) => job.car?.layout ?? []))].sort()).toEqual([...LAYOUTS].sort());
  });

  test('name only files that ship, by their hash', () => {
    for (const { job, files } of built) {
      const named = [...job.recordings.map(({ sha256 }) => sha256), ...job.handOvers.map(({ pdfSha256 }) => pdfSha256)];
      expect(files.map(({ sha256 }) => sha256)).toEqual(named);
    }
  });
});

describe('the recordings', () => {
  test.each(DEMO_RECORDING_NAMES)('%s is what the simulator makes, and can be read', async (name) => {
    const { bytes } = await shippedFile(folder, recordingFile(name));
    const shipped = gunzipSync(bytes).toString('utf8');
    const [lines, fresh] = [shipped.split('\r\n'), demoRecordingCsv(name).split('\r\n')];
    expect(lines.length, ADVICE).toBe(fresh.length);
    // Another machine's arithmetic may push a value over the edge of a step; hardly ever, and by one step.
    const other = lines.filter((line, i) => line !== fresh[i]).length;
    expect(other, ADVICE).toBeLessThanOrEqual(0.005 * lines.length);
    const { recording } = readRecordingCsv(shipped, { fileName: name });
    // Beside the header and what stands after the last line end.
    expect(recording.timeS.length).toBe(lines.length - 2);
  });
});

/** Diameter of the hole to ambient that was simulated, mm, and the cause that stands for the fault. */
const TRUTH: readonly (readonly [key: string, at: number, cause: string, diameterMm: number | null])[] = [
  ['hatchback', 0, 'leak', 0.6],
  ['hatchback', 1, 'none', null],
  ['estate', 0, 'purge_leak', null],
  ['off-roader', 0, 'vent_leak', 2.5],
  ['pickup', 0, 'vent_restricted', null],
  ['coupe', 0, 'none', null],
  ['hybrid', 0, 'leak', 0.5],
  ['saloon', 0, 'leak', 0.8],
];

describe('the findings', () => {
  test.each(TRUTH)(
    '%s, finding %i: first cause %s, hole of %s mm inside the interval',
    (key, at, cause, diameterMm) => {
      const sheet = built[DEMO_JOBS.indexOf(told(key))]?.job.findings[at]?.sheet;
      const first = sheet?.finding.causes[0];
      expect(first?.id).toBe(cause);
      if (diameterMm === null) return;
      for (const size of [first?.diameterMm, sheet?.finding.diameterMm]) {
        expect(size?.lo90).toBeLessThan(diameterMm);
        expect(size?.hi90).toBeGreaterThan(diameterMm);
      }
    },
  );

  test('a sound car’s finding says that any hole is below the smallest reference size', () => {
    for (const [key, at] of [
      ['hatchback', 1],
      ['coupe', 0],
    ] as const) {
      const sheet = built[DEMO_JOBS.indexOf(told(key))]?.job.findings[at]?.sheet;
      expect(sheet?.finding.verdict).toBe('no-fault-seen');
      expect(sheet?.finding.diameterMm?.hi90).toBeLessThan(0.5);
    }
  });

  test('were made by this version, from the car and the files that ship', () => {
    for (const { job } of built) {
      for (const { sheet } of job.findings) {
        expect(sheet.program, ADVICE).toBe(PROGRAM);
        expect(canonicalJson(sheet.car), ADVICE).toBe(canonicalJson(job.car));
        const own = job.recordings.map(({ sha256 }) => sha256);
        for (const { sha256 } of sheet.recordings) expect(own, ADVICE).toContain(sha256);
      }
    }
  });

  // The quickest three: a change of the finding shows in them as well.
  test.each([
    ['pickup', 0],
    ['off-roader', 0],
    ['hatchback', 1],
  ] as const)('of %s (%i) is what this program makes now', async (key, at) => {
    const job = told(key);
    const shipped = built[DEMO_JOBS.indexOf(job)]?.job.findings[at]?.sheet;
    const bare = await toldJob(folder, job, 1);
    const made = job.findings[at];
    if (shipped === undefined || made === undefined) throw new Error('no such finding');
    const fresh = await findingOf(folder, job, bare.job, made);
    expect(fresh.finding.verdict, ADVICE).toBe(shipped.finding.verdict);
    const [one, other] = [fresh.finding.causes[0], shipped.finding.causes[0]];
    expect(one?.id, ADVICE).toBe(other?.id);
    expect(Math.abs((one?.probability ?? 0) - (other?.probability ?? 1)), ADVICE).toBeLessThan(0.02);
    expect(
      fresh.finding.reasons.map(({ kind }) => kind),
      ADVICE,
    ).toEqual(shipped.finding.reasons.map(({ kind }) => kind));
    if (shipped.finding.diameterMm !== null) {
      expect((fresh.finding.diameterMm?.median ?? 0) / shipped.finding.diameterMm.median, ADVICE).toBeCloseTo(1, 1);
    }
  });

  test('a job that waits for its finding would get the right one: the pump run', async () => {
    const job = told('van');
    const { job: record } = await toldJob(folder, job, 1);
    const { finding } = await findingOf(folder, job, record, {
      taken: 'before-repair',
      madeAt: '2026-03-05T09:10:00.000Z',
    });
    expect(finding.causes[0]?.id).toBe('leak');
    expect(finding.diameterMm?.lo90).toBeLessThan(0.7);
    expect(finding.diameterMm?.hi90).toBeGreaterThan(0.7);
  });
});

test('the hand-over document that ships is the one that this program makes', async () => {
  const job = told('hatchback');
  const record = built[DEMO_JOBS.indexOf(job)]?.job;
  if (record === undefined || job.handOver === undefined) throw new Error('no hand-over');
  const { bytes } = await shippedFile(folder, 'hatchback.hand-over.pdf');
  const words = (pdf: Uint8Array): string =>
    wordsOf(pdf)
      .map((page) => page.words.map(({ text }) => text).join(' '))
      .join('\n');
  const shipped = words(bytes);
  expect(words(await handOverDocumentOf(record, job.handOver)) === shipped, ADVICE).toBe(true);
  expect(shipped).toContain('DEMO-CAP-01');
  expect(shipped).toContain('Invented');
});

describe('in a store', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await testServer();
  });
  afterEach(() => server.afterTest());
  afterAll(() => server.leave());

  test('the list shows what each job waits for, and no finding is outdated', async () => {
    const store = await server.freshStore({ program: PROGRAM });
    await addDemoShop(store, folder);
    const list = await store.jobs.list({});
    expect(
      list.map(({ number, waitsFor }) => [number, waitsFor]).sort(([one], [other]) => Number(one) - Number(other)),
    ).toEqual([
      [1, 'nothing'],
      [2, 'repair'],
      [3, 'check'],
      [4, 'proof'],
      [5, 'hand-over'],
      [6, 'finding'],
      [7, 'repair'],
      [8, 'check'],
      [9, 'recording'],
      [10, 'car'],
    ]);
    expect(list.every(({ demo }) => demo)).toBe(true);
  });

  test('every file that a job names, its printed document too, is known to the store and so to backups', async () => {
    const store = await server.freshStore({ program: PROGRAM });
    const jobs = await addDemoShop(store, folder);
    const named = jobs.flatMap((job) => [
      ...job.recordings.map(({ sha256 }) => sha256),
      ...job.handOvers.map(({ pdfSha256 }) => pdfSha256),
    ]);
    expect(jobs.some(({ handOvers }) => handOvers.length > 0)).toBe(true);
    const known = await store.sql.selectFrom('job_files').select('sha256').execute();
    expect(new Set(known.map(({ sha256 }) => sha256))).toEqual(new Set(named));
  });

  test('it comes once, to an empty store only, and does not come back when it is removed', async () => {
    const store = await server.freshStore({ program: PROGRAM });
    expect(await addDemoShopOnFirstStart(store, folder)).toBe(DEMO_JOBS.length);
    expect(await addDemoShopOnFirstStart(store, folder)).toBe(0);
    expect(await store.jobs.removeDemo({ name: 'tester' })).toBe(DEMO_JOBS.length);
    expect(await addDemoShopOnFirstStart(store, folder)).toBe(0);
    expect(await store.jobs.list({})).toEqual([]);
  });

  test('a store with a job of its own gets none', async () => {
    const store = await server.freshStore({ program: PROGRAM });
    await store.jobs.create({ name: 'tester' }, { sections: {} });
    expect(await addDemoShopOnFirstStart(store, folder)).toBe(0);
    expect(await store.jobs.list({})).toHaveLength(1);
  });
});
