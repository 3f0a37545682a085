import { expect, test } from 'vitest';
import { inputsSha256 } from '../../../src/jobs/inputs-hash.ts';
import type { NewJob } from '../../../src/jobs/job-store.ts';
import { jobSummarySchema } from '../../../src/jobs/record/job.ts';
import { waitsFor } from '../../../src/jobs/record/waits-for.ts';
import type { GetServer } from '../contract.ts';
import {
  ANNA,
  finding,
  keptRecording,
  MOMENT,
  sampleCar,
  sampleCheck,
  sampleProgram,
  sampleRepair,
} from '../samples.ts';

const named = (name: string, more: NewJob['sections'] = {}): NewJob => ({ sections: { vehicle: { name }, ...more } });

export function listContract(get: GetServer): void {
  test('says what each job waits for, at every step of a job', async () => {
    const { jobs, files } = await get().freshStore({ program: sampleProgram });
    let job = await jobs.create(ANNA, { sections: {} });
    const { id } = job;
    const seen: string[] = [];
    const look = async () => {
      const [row] = await jobs.list({});
      expect(jobSummarySchema.parse(row)).toEqual(row);
      expect(row?.waitsFor).toBe(waitsFor(await jobs.read(id)));
      expect(await jobs.list({ waitsFor: row!.waitsFor })).toHaveLength(1);
      seen.push(row!.waitsFor);
    };
    await look();
    job = await jobs.change(id, ANNA, job.version, { section: 'complaint', value: { words: 'smells', types: [] } });
    await look();
    job = await jobs.change(id, ANNA, job.version, { section: 'car', value: sampleCar });
    await look();
    job = await jobs.addRecording(id, ANNA, await keptRecording(files, 'x'));
    await look();
    job = await jobs.addFinding(id, ANNA, finding(inputsSha256(job)));
    await look();
    job = await jobs.change(id, ANNA, job.version, { section: 'checks', value: [sampleCheck] });
    await look();
    job = await jobs.addFinding(id, ANNA, finding(inputsSha256(job)));
    await look();
    job = await jobs.change(id, ANNA, job.version, { section: 'repairs', value: [sampleRepair] });
    await look();
    const proof = { before: [], after: [], verdict: 'held' as const, words: '', missing: '' };
    job = await jobs.change(id, ANNA, job.version, { section: 'proof', value: proof });
    await look();
    job = await jobs.setClosed(id, ANNA, job.version, true);
    await look();
    expect(seen).toEqual([
      'complaint',
      'car',
      'recording',
      'finding',
      'check',
      'finding',
      'repair',
      'proof',
      'hand-over',
      'nothing',
    ]);
  });

  test('a job whose finding is by another program waits for a finding again', async () => {
    const folder = get().folder();
    const databaseUrl = await get().freshDatabase();
    const { openStore } = await import('../../../src/jobs/open-store.ts');
    const old = await openStore({ dataFolder: folder, databaseUrl, program: sampleProgram });
    const kept = await keptRecording(old.files, 'x');
    const made = await old.jobs.create(ANNA, {
      sections: { car: sampleCar, complaint: { words: 'a', types: [] }, recordings: [kept] },
    });
    await old.jobs.addFinding(made.id, ANNA, finding(inputsSha256(made)));
    expect(await old.jobs.list({ waitsFor: 'check' })).toHaveLength(1);
    await old.close();
    const next = await openStore({ dataFolder: folder, databaseUrl, program: 'vaporwright 99.0.0' });
    const [row] = await next.jobs.list({});
    expect(row?.waitsFor).toBe('finding');
    expect(waitsFor(await next.jobs.read(made.id))).toBe('finding');
    expect(await next.jobs.list({ waitsFor: 'check' })).toEqual([]);
    expect(await next.jobs.list({ waitsFor: 'finding' })).toHaveLength(1);
    await next.close();
  });

  test('shows the finding, the first words and the codes', async () => {
    const { jobs } = await get().freshStore();
    const words = `x${'\u{1f527}'.repeat(150)}`;
    const made = await jobs.create(ANNA, {
      sections: {
        complaint: { words, types: [] },
        codes: [{ code: 'P0442', status: 'stored' }],
        vehicle: { name: 'Blue', registration: 'AB 12' },
      },
    });
    await jobs.addFinding(made.id, ANNA, finding(inputsSha256(made)));
    const [row] = await jobs.list({});
    expect(row).toMatchObject({
      number: 1,
      vehicle: 'Blue',
      registration: 'AB 12',
      codes: ['P0442'],
      complaint: `x${'\u{1f527}'.repeat(99)}`,
      finding: { verdict: 'fault', cause: 'leak', probability: 0.912 },
    });
    expect(jobSummarySchema.parse(row)).toEqual(row);
  });

  test('finds by words: all of them, anywhere, whatever their case and accents', async () => {
    const { jobs } = await get().freshStore();
    await jobs.create(ANNA, named('Blue estate'));
    await jobs.create(ANNA, named('Müllers Straßenwagen'));
    await jobs.create(ANNA, {
      sections: {
        vehicle: { name: 'Red van', registration: 'AB 12' },
        complaint: { words: 'The nozzle clicks off', types: [] },
        codes: [{ code: 'P0455', status: 'stored' }],
      },
    });
    await jobs.create(ANNA, named('100% electric'));
    const expected: Readonly<Record<string, readonly string[]>> = {
      blue: ['Blue estate'],
      'ESTATE blue': ['Blue estate'],
      muller: ['Müllers Straßenwagen'],
      STRASSE: ['Müllers Straßenwagen'],
      '0455': ['Red van'],
      'ab 12': ['Red van'],
      clicks: ['Red van'],
      '100%': ['100% electric'],
      _: [],
      'blue red': [],
      '  ': ['100% electric', 'Red van', 'Müllers Straßenwagen', 'Blue estate'],
    };
    for (const [words, vehicles] of Object.entries(expected)) {
      expect({ words, found: (await jobs.list({ words })).map(({ vehicle }) => vehicle) }).toEqual({
        words,
        found: vehicles,
      });
    }
  });

  test('pages by moment leave none out, though several jobs changed in the same instant', async () => {
    let count = 0;
    // Three jobs in each instant.
    const { jobs } = await get().freshStore({
      now: () => new Date(Date.parse(MOMENT) + 1000 * Math.floor(count++ / 3)),
    });
    count = 0;
    for (let n = 0; n < 12; n++) await jobs.create(ANNA, named(`${n}`));
    const seen: string[] = [];
    let before: string | undefined;
    for (;;) {
      const page = await jobs.list({ limit: 4, ...(before === undefined ? {} : { before }) });
      if (page.length === 0) break;
      seen.push(...page.map(({ vehicle }) => vehicle));
      before = page.at(-1)!.changedAt;
    }
    expect(seen).toHaveLength(12);
    expect(new Set(seen).size).toBe(12);
  });

  test('filters by closed', async () => {
    const { jobs } = await get().freshStore();
    const open = await jobs.create(ANNA, named('open'));
    const shut = await jobs.create(ANNA, named('shut'));
    await jobs.setClosed(shut.id, ANNA, 1, true);
    expect((await jobs.list({ closed: false })).map(({ id }) => id)).toEqual([open.id]);
    expect((await jobs.list({ closed: true })).map(({ id }) => id)).toEqual([shut.id]);
    expect((await jobs.list({})).map(({ id }) => id)).toEqual([shut.id, open.id]);
  });
}
