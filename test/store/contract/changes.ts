import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import { NoSuchJob, VersionConflict } from '../../../src/jobs/job-store.ts';
import { jobSchema, SECTION_NAMES } from '../../../src/jobs/record/job.ts';
import type { GetServer } from '../contract.ts';
import { ANNA, BERT, keptRecording, MOMENT, sampleCar, sampleCheck, sampleMonitor, sampleRepair } from '../samples.ts';

/** Character 0, half of a pair, a quote, a backslash, beyond the first plane. */
const ODD = 'a\0b \ud800 "\\" \u{1f527} ü\n';

export function changesContract(get: GetServer): void {
  test('a new job has empty sections, version 1 and the next number', async () => {
    const { jobs } = await get().freshStore({ now: () => new Date(MOMENT) });
    const job = await jobs.create(ANNA, { sections: {} });
    expect(jobSchema.parse(job)).toEqual(job);
    expect(job).toMatchObject({
      number: 1,
      version: 1,
      createdAt: MOMENT,
      changedAt: MOMENT,
      demo: false,
      closed: false,
    });
    expect(job).toMatchObject({
      complaint: { words: '', types: [] },
      codes: [],
      car: null,
      recordings: [],
      findings: [],
    });
    expect(await jobs.read(job.id)).toEqual(job);
    expect((await jobs.create(ANNA, { sections: {} })).number).toBe(2);
  });

  test('every section comes back as it was written, to the letter and the last digit', async () => {
    const { jobs, files } = await get().freshStore();
    const kept = await keptRecording(files, 'time_s\n0\n');
    const values = {
      complaint: { words: ODD, types: ['smell' as const] },
      codes: [{ code: 'P0442', status: 'pending' as const, freezeFrame: [{ name: 'load', value: ODD }] }],
      vehicle: { name: ODD, modelYear: 2011, odometerKm: 0.1 + 0.2 },
      car: sampleCar,
      recordings: [{ ...kept, phases: [{ kind: 'hold' as const, fromS: 5e-324, toS: 1.7976931348623157e308 }] }],
      checks: [sampleCheck],
      repairs: [sampleRepair],
      proof: { before: [kept.id], after: [], verdict: 'not-proven' as const, words: ODD, missing: '' },
      monitor: sampleMonitor(kept.id),
      attachments: [
        {
          id: randomUUID(),
          fileName: 'a.png',
          mediaType: 'image/png',
          sha256: kept.sha256,
          bytes: kept.bytes,
          at: MOMENT,
          caption: ODD,
        },
      ],
      notes: [{ id: randomUUID(), at: MOMENT, by: 'Anna', text: ODD }],
    };
    let job = await jobs.create(ANNA, { sections: {} });
    for (const section of SECTION_NAMES) {
      job = await jobs.change(job.id, ANNA, job.version, { section, value: values[section] as never });
    }
    expect(job).toMatchObject(values);
    expect(await jobs.read(job.id)).toEqual(job);
    const made = await jobs.create(ANNA, { sections: values });
    expect(await jobs.read(made.id)).toEqual(made);
    expect(made).toMatchObject(values);
  });

  test('the history says who, when, what, before and after', async () => {
    let tick = 0;
    const { jobs } = await get().freshStore({ now: () => new Date(Date.parse(MOMENT) + 1000 * tick++) });
    tick = 0;
    const made = await jobs.create(ANNA, { sections: { vehicle: { name: 'Blue estate' } } });
    await jobs.change(made.id, BERT, 1, { section: 'vehicle', value: { name: 'Red estate' } });
    await jobs.setClosed(made.id, ANNA, 2, true);
    await jobs.setClosed(made.id, ANNA, 3, false);
    expect(await jobs.history(made.id)).toEqual([
      {
        version: 1,
        at: '2026-03-01T08:30:00.000Z',
        by: 'Anna',
        what: 'created',
        section: null,
        before: null,
        after: { vehicle: { name: 'Blue estate' } },
      },
      {
        version: 2,
        at: '2026-03-01T08:30:01.000Z',
        by: 'Bert',
        what: 'changed',
        section: 'vehicle',
        before: { name: 'Blue estate' },
        after: { name: 'Red estate' },
      },
      {
        version: 3,
        at: '2026-03-01T08:30:02.000Z',
        by: 'Anna',
        what: 'closed',
        section: null,
        before: null,
        after: null,
      },
      {
        version: 4,
        at: '2026-03-01T08:30:03.000Z',
        by: 'Anna',
        what: 'reopened',
        section: null,
        before: null,
        after: null,
      },
    ]);
  });

  test('a change to an old version is refused with what stands now, and nothing is written', async () => {
    const { jobs } = await get().freshStore();
    const made = await jobs.create(ANNA, { sections: {} });
    const current = await jobs.change(made.id, BERT, 1, { section: 'vehicle', value: { name: 'Bert was first' } });
    for (const late of [
      () => jobs.change(made.id, ANNA, 1, { section: 'notes', value: [] }),
      () => jobs.undo(made.id, ANNA, 1),
      () => jobs.setClosed(made.id, ANNA, 1, true),
      () => jobs.change(made.id, ANNA, 3, { section: 'notes', value: [] }),
    ]) {
      const refusal = await late().catch((error: unknown) => error);
      expect(refusal).toBeInstanceOf(VersionConflict);
      expect((refusal as VersionConflict).current).toEqual(current);
    }
    expect(await jobs.read(made.id)).toEqual(current);
    expect(await jobs.history(made.id)).toHaveLength(2);
  });

  test('of ten changes to the same version one is made; additions are all made', async () => {
    const { jobs, files } = await get().freshStore();
    const { id } = await jobs.create(ANNA, { sections: {} });
    const tries = await Promise.allSettled(
      Array.from({ length: 10 }, (_, n) =>
        jobs.change(id, ANNA, 1, { section: 'vehicle', value: { name: `try ${n}` } }),
      ),
    );
    const won = tries.flatMap((outcome, n) => (outcome.status === 'fulfilled' ? [n] : []));
    expect(won).toHaveLength(1);
    expect((await jobs.read(id)).vehicle.name).toBe(`try ${won[0]}`);
    const entries = await Promise.all(Array.from({ length: 10 }, (_, n) => keptRecording(files, `content ${n}`)));
    await Promise.all(entries.map((entry) => jobs.addRecording(id, ANNA, entry)));
    const job = await jobs.read(id);
    expect(job.version).toBe(12);
    expect(job.recordings.map((entry) => entry.id).sort()).toEqual(entries.map((entry) => entry.id).sort());
    expect((await jobs.history(id)).map(({ version }) => version)).toEqual(Array.from({ length: 12 }, (_, n) => n + 1));
  });

  test('jobs made at once have numbers without gap or double', async () => {
    const { jobs } = await get().freshStore();
    const made = await Promise.all(Array.from({ length: 12 }, () => jobs.create(ANNA, { sections: {} })));
    expect(made.map(({ number }) => number).sort((one, other) => one - other)).toEqual(
      Array.from({ length: 12 }, (_, n) => n + 1),
    );
  });

  test('who reads while others write sees one moment, never a mixture', async () => {
    const { jobs } = await get().freshStore();
    const { id } = await jobs.create(ANNA, { sections: { vehicle: { name: '1' } } });
    const writing = (async () => {
      for (let version = 1; version <= 40; version++) {
        await jobs.change(id, ANNA, version, { section: 'vehicle', value: { name: `${version + 1}` } });
      }
    })();
    let isOver = false;
    writing.finally(() => {
      isOver = true;
    });
    let seen = 0;
    while (!isOver) {
      const job = await jobs.read(id);
      expect(job.vehicle.name).toBe(`${job.version}`);
      seen++;
    }
    await writing;
    expect(seen).toBeGreaterThan(0);
  });

  test('a job that is not there is said not to be there, whatever is asked', async () => {
    const { jobs } = await get().freshStore();
    for (const id of ['no-uuid', '00000000-0000-4000-8000-000000000000', "'; drop table jobs; --"]) {
      for (const ask of [
        () => jobs.read(id),
        () => jobs.history(id),
        () => jobs.change(id, ANNA, 1, { section: 'notes', value: [] }),
        () => jobs.undo(id, ANNA, 1),
      ]) {
        await expect(ask()).rejects.toBeInstanceOf(NoSuchJob);
      }
    }
  });
}
