import { expect, test } from 'vitest';
import type { GetServer } from '../contract.ts';
import { ANNA, MOMENT, sha256Of } from '../samples.ts';

export function workContract(get: GetServer): void {
  test('the same work is begun once, however many ask', async () => {
    const { jobs, work } = await get().freshStore();
    const { id: jobId } = await jobs.create(ANNA, { sections: {} });
    const wanted = { kind: 'finding', jobId, inputsSha256: sha256Of('inputs') };
    const begun = await Promise.all(Array.from({ length: 8 }, () => work.begin(wanted)));
    expect(begun.filter(({ isNew }) => isNew)).toHaveLength(1);
    expect(new Set(begun.map((each) => each.work.id)).size).toBe(1);
    expect((await work.begin({ ...wanted, inputsSha256: sha256Of('others') })).isNew).toBe(true);
    const { id } = begun[0]!.work;
    await work.end(id, 'done', { result: { findingId: 'x' } });
    expect(await work.read(id)).toMatchObject({ state: 'done', fraction: 1, result: { findingId: 'x' } });
    expect((await work.begin(wanted)).isNew).toBe(true);
  });

  test('progress moves it, the first end counts', async () => {
    const { jobs, work } = await get().freshStore();
    const { id: jobId } = await jobs.create(ANNA, { sections: {} });
    const { id } = (await work.begin({ kind: 'finding', jobId, inputsSha256: sha256Of('a') })).work;
    await work.progress(id, 0.25, 'weighing causes');
    expect(await work.open(jobId)).toMatchObject([{ id, state: 'running', fraction: 0.25, words: 'weighing causes' }]);
    await work.end(id, 'cancelled', { words: 'cancelled by Anna' });
    await work.end(id, 'done', { result: 1 });
    await work.progress(id, 0.9, 'late');
    expect(await work.read(id)).toMatchObject({ state: 'cancelled', words: 'cancelled by Anna', result: null });
    expect(await work.open(jobId)).toEqual([]);
    expect(await work.read('00000000-0000-4000-8000-000000000000')).toBeUndefined();
  });

  test('work of a program that has gone silent is failed, other work is left', async () => {
    let now = Date.parse(MOMENT);
    const { jobs, work } = await get().freshStore({ now: () => new Date(now) });
    const { id: jobId } = await jobs.create(ANNA, { sections: {} });
    const begin = async (word: string) =>
      (await work.begin({ kind: 'finding', jobId, inputsSha256: sha256Of(word) })).work.id;
    const [silent, living] = [await begin('silent'), await begin('living')];
    now += 60_000;
    await work.progress(living, 0.5, 'half');
    expect(await work.failSilent(new Date(now - 30_000), 'the program ended')).toBe(1);
    expect(await work.read(silent)).toMatchObject({ state: 'failed', words: 'the program ended' });
    expect(await work.read(living)).toMatchObject({ state: 'running' });
  });
}
