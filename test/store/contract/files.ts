import { randomUUID } from 'node:crypto';
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { StoreProblem } from '../../../src/jobs/store-problem.ts';
import type { GetServer } from '../contract.ts';
import { ANNA, bytesOf, keptRecording, MOMENT, piecesOf, recording, sha256Of } from '../samples.ts';

const problem = (code: string) => expect.objectContaining({ name: 'StoreProblem', code });

export function filesContract(get: GetServer): void {
  test('keeps bytes as they are, by hash, once', async () => {
    const { files } = await get().freshStore();
    const bytes = Uint8Array.from({ length: 70_000 }, (_, n) => (n * 31) % 256);
    const kept = await files.keep(piecesOf(bytes));
    expect(kept).toEqual({ sha256: sha256Of(bytes), bytes: 70_000 });
    expect(await files.keep(piecesOf(bytes))).toEqual(kept);
    expect(await bytesOf(files.open(kept.sha256))).toEqual(Buffer.from(bytes));
    expect(readFileSync(files.path(kept.sha256)).byteLength).toBe(70_000);
    expect(await files.has(kept.sha256)).toBe(true);
    expect(await files.size(kept.sha256)).toBe(70_000);
    expect((await files.keep(piecesOf(''))).bytes).toBe(0);
  });

  test('a stream that breaks leaves nothing behind', async () => {
    const { files } = await get().freshStore();
    const breaking = (async function* () {
      yield Buffer.from('half');
      throw new Error('the sender went away');
    })();
    await expect(files.keep(breaking)).rejects.toThrow('the sender went away');
    expect(await files.has(sha256Of('half'))).toBe(false);
  });

  test('a changed byte is found when the file is read', async () => {
    const { files } = await get().freshStore();
    const kept = await files.keep(piecesOf('pressure'));
    chmodSync(files.path(kept.sha256), 0o600);
    writeFileSync(files.path(kept.sha256), 'pressurf');
    await expect(bytesOf(files.open(kept.sha256))).rejects.toEqual(problem('corrupt'));
    await expect(bytesOf(files.open(sha256Of('nobody')))).rejects.toEqual(problem('missing-file'));
  });

  test('a hash is no way out of the folder', async () => {
    const { files } = await get().freshStore();
    expect(() => files.path('../../etc/passwd')).toThrow(/SHA-256/);
    await expect(files.has('x')).rejects.toThrow(/SHA-256/);
  });

  test('no row names a file that has not been kept', async () => {
    const { jobs, sql } = await get().freshStore();
    const job = await jobs.create(ANNA, { sections: {} });
    const entry = recording({ sha256: sha256Of('not kept'), bytes: 8 });
    const attachment = {
      id: randomUUID(),
      fileName: 'a',
      mediaType: 'a/b',
      sha256: entry.sha256,
      bytes: 8,
      at: MOMENT,
      caption: '',
    };
    for (const add of [
      () => jobs.addRecording(job.id, ANNA, entry),
      () => jobs.addAttachment(job.id, ANNA, attachment),
      () => jobs.change(job.id, ANNA, 1, { section: 'recordings', value: [entry] }),
      () => jobs.create(ANNA, { sections: { recordings: [entry] } }),
      () =>
        jobs.addHandOver(job.id, ANNA, {
          id: randomUUID(),
          madeAt: MOMENT,
          by: 'Anna',
          pdfSha256: entry.sha256,
          language: 'en',
        }),
    ]) {
      const thrown = await add().catch((error: unknown) => error);
      expect(thrown).toBeInstanceOf(StoreProblem);
      expect((thrown as StoreProblem).code).toBe('missing-file');
    }
    expect(await jobs.read(job.id)).toEqual(job);
    expect(await sql.selectFrom('files').selectAll().execute()).toEqual([]);
  });

  test('a document handed over is kept and named', async () => {
    const { jobs, files } = await get().freshStore();
    const job = await jobs.create(ANNA, { sections: {} });
    const { sha256 } = await files.keep(piecesOf('%PDF-1.7'));
    const handOver = { id: randomUUID(), madeAt: MOMENT, by: 'Anna', pdfSha256: sha256, language: 'de' as const };
    const after = await jobs.addHandOver(job.id, ANNA, handOver);
    expect(after.handOvers).toEqual([handOver]);
    expect(await jobs.read(job.id)).toEqual(after);
  });

  test('one file may belong to several recordings and jobs', async () => {
    const { jobs, files } = await get().freshStore();
    const entry = await keptRecording(files, 'shared');
    const [one, other] = [await jobs.create(ANNA, { sections: {} }), await jobs.create(ANNA, { sections: {} })];
    await jobs.addRecording(one.id, ANNA, entry);
    await jobs.addRecording(one.id, ANNA, { ...entry, id: randomUUID() });
    await jobs.addRecording(other.id, ANNA, { ...entry, id: randomUUID() });
    expect((await jobs.read(one.id)).recordings).toHaveLength(2);
  });
}
