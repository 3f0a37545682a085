import fc from 'fast-check';
import { expect, test } from 'vitest';
import { NothingToUndo } from '../../../src/jobs/job-store.ts';
import type { GetServer } from '../contract.ts';
import { ANNA, BERT, keptRecording } from '../samples.ts';

export function undoContract(get: GetServer): void {
  test('takes back the newest change, then the one before, and writes each down', async () => {
    const { jobs, files } = await get().freshStore();
    const made = await jobs.create(ANNA, { sections: { vehicle: { name: 'first' } } });
    await jobs.change(made.id, ANNA, 1, { section: 'vehicle', value: { name: 'second' } });
    const entry = await keptRecording(files, 'x');
    await jobs.addRecording(made.id, ANNA, entry);
    const once = await jobs.undo(made.id, BERT, 3);
    expect(once.recordings).toEqual([]);
    expect(once.vehicle.name).toBe('second');
    const twice = await jobs.undo(made.id, BERT, 4);
    expect(twice.vehicle.name).toBe('first');
    await expect(jobs.undo(made.id, BERT, 5)).rejects.toBeInstanceOf(NothingToUndo);
    expect(await jobs.read(made.id)).toEqual(twice);
    // The raw file stays: nothing is lost by taking back.
    expect(await files.has(entry.sha256)).toBe(true);
    expect((await jobs.history(made.id)).slice(3)).toMatchObject([
      { version: 4, by: 'Bert', what: 'undone', section: 'recordings', before: [entry], after: [], undoes: 3 },
      {
        version: 5,
        by: 'Bert',
        what: 'undone',
        section: 'vehicle',
        before: { name: 'second' },
        after: { name: 'first' },
        undoes: 2,
      },
    ]);
  });

  test('what is not a change of a section is passed over', async () => {
    const { jobs } = await get().freshStore();
    const { id } = await jobs.create(ANNA, { sections: {} });
    await jobs.change(id, ANNA, 1, { section: 'vehicle', value: { name: 'named' } });
    await jobs.setClosed(id, ANNA, 2, true);
    const job = await jobs.undo(id, ANNA, 3);
    expect(job).toMatchObject({ vehicle: { name: '' }, closed: true });
  });

  test('any sequence of changes and undoings does what a stack does', async () => {
    const { jobs } = await get().freshStore();
    const step = fc.oneof(
      fc.record({ section: fc.constant('vehicle' as const), name: fc.string({ maxLength: 8 }) }),
      fc.record({ section: fc.constant('complaint' as const), name: fc.string({ maxLength: 8 }) }),
      fc.constant('undo' as const),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 14 }), async (steps) => {
        let job = await jobs.create(ANNA, { sections: {} });
        const state = { vehicle: '', complaint: '' };
        const stack: { readonly section: 'vehicle' | 'complaint'; readonly before: string }[] = [];
        for (const what of steps) {
          if (what === 'undo') {
            const last = stack.pop();
            const undone = jobs.undo(job.id, ANNA, job.version);
            if (last === undefined) {
              await expect(undone).rejects.toBeInstanceOf(NothingToUndo);
              continue;
            }
            state[last.section] = last.before;
            job = await undone;
          } else {
            stack.push({ section: what.section, before: state[what.section] });
            state[what.section] = what.name;
            const value = what.section === 'vehicle' ? { name: what.name } : { words: what.name, types: [] };
            job = await jobs.change(job.id, ANNA, job.version, { section: what.section, value } as never);
          }
          expect({ vehicle: job.vehicle.name, complaint: job.complaint.words }).toEqual(state);
        }
        expect(await jobs.read(job.id)).toEqual(job);
      }),
      { numRuns: 15 },
    );
  });
}
