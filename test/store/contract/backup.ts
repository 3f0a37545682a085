import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { gunzipSync, gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { BACKED_UP, OF_THE_MOMENT } from '../../../src/jobs/backup/backup-format.ts';
import type { GetServer } from '../contract.ts';
import { fillShop, MORE_JOBS, RECORDING_TEXT, readShop } from '../filled-shop.ts';
import { ANNA, bytesOf, keptRecording, piecesOf, sha256Of } from '../samples.ts';

const JOBS = 1 + MORE_JOBS;

export function backupContract(get: GetServer): void {
  test('what is restored is what was backed up', async () => {
    const [here, there] = [await get().freshStore(), await get().freshStore()];
    await fillShop(here);
    const backup = await bytesOf(here.backup());
    const restored = await there.restore(piecesOf(backup), { replace: false });
    expect(restored).toMatchObject({ jobs: JOBS, files: 2 });
    expect(await readShop(there)).toEqual(await readShop(here));
    const [recording] = (await there.jobs.list({ words: 'odd' })).map(({ id }) => id);
    const { recordings } = await there.jobs.read(recording!);
    expect((await bytesOf(there.files.open(recordings[0]!.sha256))).toString()).toBe(RECORDING_TEXT);
    // It goes on counting, and nobody is signed in by a backup.
    expect((await there.jobs.create(ANNA, { sections: {} })).number).toBe(JOBS + 1);
    await there.securityLog.write({ kind: 'next' });
    expect((await there.securityLog.read()).map(({ kind }) => kind)).toEqual(['next', 'signed-in']);
    expect(await there.logins.find(sha256Of('cookie'))).toBeUndefined();
  });

  test('every table is in the backup, or is known not to be', async () => {
    const { sql } = await get().freshStore();
    const tables = (await sql.introspection.getTables()).filter(({ schema }) => schema === 'vaporwright');
    expect(tables.map(({ name }) => name).sort()).toEqual([...BACKED_UP, ...OF_THE_MOMENT, 'schema_versions'].sort());
  });

  test('where there are jobs it takes a confirmation, and demo jobs are no hindrance', async () => {
    const [here, there] = [await get().freshStore(), await get().freshStore()];
    await fillShop(here);
    const backup = await bytesOf(here.backup());
    await there.jobs.create(ANNA, { demo: true, sections: {} });
    const mine = await there.jobs.create(ANNA, { sections: {} });
    await expect(there.restore(piecesOf(backup), { replace: false })).rejects.toMatchObject({ code: 'not-empty' });
    expect(await there.jobs.read(mine.id)).toEqual(mine);
    await there.restore(piecesOf(backup), { replace: true });
    expect(await readShop(there)).toEqual(await readShop(here));
    // A second time as well; what was before the last one is kept aside.
    await there.restore(piecesOf(backup), { replace: true });
    expect(await there.jobs.list({ limit: 200 })).toHaveLength(JOBS);
    const demoOnly = await get().freshStore();
    await demoOnly.jobs.create(ANNA, { demo: true, sections: {} });
    await demoOnly.restore(piecesOf(backup), { replace: false });
    expect(await demoOnly.jobs.list({ limit: 200 })).toHaveLength(JOBS);
  });

  test('a backup taken while others write is of one moment', async () => {
    const [here, there] = [await get().freshStore(), await get().freshStore()];
    const { id } = await here.jobs.create(ANNA, { sections: { vehicle: { name: '1' } } });
    let isOver = false;
    const writing = (async () => {
      for (let version = 1; !isOver; version++) {
        await here.jobs.change(id, ANNA, version, { section: 'vehicle', value: { name: `${version + 1}` } });
      }
    })();
    const backup = await bytesOf(here.backup());
    isOver = true;
    await writing;
    await there.restore(piecesOf(backup), { replace: false });
    const job = await there.jobs.read(id);
    expect(job.vehicle.name).toBe(`${job.version}`);
    expect(await there.jobs.history(id)).toHaveLength(job.version);
  });

  test('a backup that is cut off anywhere, changed or none at all changes nothing', async () => {
    const [here, there] = [await get().freshStore(), await get().freshStore()];
    await fillShop(here);
    const mine = await there.jobs.create(ANNA, { sections: { vehicle: { name: 'stays' } } });
    const packed = await bytesOf(here.backup());
    const plain = gunzipSync(packed);
    const flipped = Buffer.from(plain);
    flipped[plain.indexOf('car 2')]! ^= 1;
    const cut = [
      0,
      1,
      511,
      512,
      2000,
      Math.floor(plain.byteLength / 2),
      plain.byteLength - 1024 - 600,
      plain.byteLength - 1500,
    ];
    const spoiled = [
      ...cut.map((at) => gzipSync(plain.subarray(0, at))),
      packed.subarray(0, packed.byteLength - 20),
      packed.subarray(0, 100),
      gzipSync(flipped),
      gzipSync(Buffer.alloc(2048)),
      Buffer.from('this is no backup at all'),
      Buffer.alloc(0),
    ];
    for (const bytes of spoiled) {
      const thrown = await there.restore(piecesOf(bytes), { replace: true }).catch((error: unknown) => error);
      expect(thrown).toMatchObject({ name: 'StoreProblem', code: 'bad-file' });
      expect((thrown as Error).message).toMatch(/Nothing was changed/);
    }
    expect(await there.jobs.list({})).toMatchObject([{ id: mine.id, vehicle: 'stays' }]);
    // And the good one is still taken after all these.
    await there.restore(piecesOf(packed), { replace: true });
    expect(await there.jobs.list({ limit: 200 })).toHaveLength(JOBS);
  });

  test('a backup of a newer version is refused as such', async () => {
    const [here, there] = [await get().freshStore(), await get().freshStore()];
    const plain = gunzipSync(await bytesOf(here.backup()));
    const at = plain.indexOf('"schemaVersion": ') + '"schemaVersion": '.length;
    plain[at] = '9'.charCodeAt(0);
    await expect(there.restore(piecesOf(gzipSync(plain)), { replace: true })).rejects.toMatchObject({
      code: 'newer-data',
    });
  });

  test('a missing raw file makes the backup fail loudly instead of leaving it out', async () => {
    const store = await get().freshStore();
    const entry = await keptRecording(store.files, 'will vanish');
    await store.jobs.create(ANNA, { sections: { recordings: [{ ...entry, id: randomUUID() }] } });
    rmSync(store.files.path(entry.sha256));
    await expect(bytesOf(store.backup())).rejects.toMatchObject({ code: 'missing-file' });
  });
}
