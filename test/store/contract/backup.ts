import { randomUUID } from 'node:crypto';
import { gunzipSync, gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { BACKED_UP, OF_THE_MOMENT } from '../../../src/jobs/backup/backup-format.ts';
import { inputsSha256 } from '../../../src/jobs/inputs-hash.ts';
import type { Store } from '../../../src/jobs/open-store.ts';
import type { GetServer } from '../contract.ts';
import { ANNA, bytesOf, finding, keptRecording, piecesOf, sampleCar, sha256Of } from '../samples.ts';

async function fill(store: Store) {
  const { jobs, files } = store;
  const job = await jobs.create(ANNA, {
    sections: {
      complaint: { words: 'Odd \0 \ud800 "\\" text', types: [] },
      car: sampleCar,
      recordings: [await keptRecording(files, 'a,b\n1,2\n')],
    },
  });
  await jobs.addFinding(job.id, ANNA, finding(inputsSha256(job)));
  await jobs.change(job.id, ANNA, 2, { section: 'vehicle', value: { name: 'Blue', odometerKm: 123456.7 } });
  for (let n = 0; n < 45; n++) await jobs.create(ANNA, { sections: { vehicle: { name: `car ${n}` } } });
  const owner = await store.users.create({ name: 'Olga', role: 'owner', passwordHash: '$argon2id$x' });
  await store.logins.start(owner.id, sha256Of('cookie'), new Date('2099-01-01T00:00:00Z'));
  await store.shares.make(ANNA, { jobId: job.id, tokenSha256: sha256Of('link'), label: 'the owner' });
  await store.securityLog.write({ kind: 'signed-in', actor: 'Olga', detail: { n: 1 } });
  await store.settings.write(ANNA, 'shop', { name: 'Corner garage' });
}

async function everything(store: Store) {
  const list = await store.jobs.list({ limit: 200 });
  const jobs = await Promise.all(list.map(({ id }) => store.jobs.read(id)));
  const histories = await Promise.all(list.map(({ id }) => store.jobs.history(id)));
  const users = await store.users.list();
  const shares = (await Promise.all(list.map(({ id }) => store.shares.list(id)))).flat();
  const log = await store.securityLog.read();
  const settings = await store.sql.selectFrom('settings').selectAll().execute();
  return { list, jobs, histories, users, shares, log, settings };
}

export function backupContract(get: GetServer): void {
  test('what is restored is what was backed up', async () => {
    const [here, there] = [await get().freshStore(), await get().freshStore()];
    await fill(here);
    const backup = await bytesOf(here.backup());
    const restored = await there.restore(piecesOf(backup), { replace: false });
    expect(restored).toMatchObject({ jobs: 46, files: 1 });
    expect(await everything(there)).toEqual(await everything(here));
    const [recording] = (await there.jobs.list({ words: 'odd' })).map(({ id }) => id);
    const { recordings } = await there.jobs.read(recording!);
    expect((await bytesOf(there.files.open(recordings[0]!.sha256))).toString()).toBe('a,b\n1,2\n');
    // It goes on counting, and nobody is signed in by a backup.
    expect((await there.jobs.create(ANNA, { sections: {} })).number).toBe(47);
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
    await fill(here);
    const backup = await bytesOf(here.backup());
    await there.jobs.create(ANNA, { demo: true, sections: {} });
    const mine = await there.jobs.create(ANNA, { sections: {} });
    await expect(there.restore(piecesOf(backup), { replace: false })).rejects.toMatchObject({ code: 'not-empty' });
    expect(await there.jobs.read(mine.id)).toEqual(mine);
    await there.restore(piecesOf(backup), { replace: true });
    expect(await everything(there)).toEqual(await everything(here));
    // A second time as well; what was before the last one is kept aside.
    await there.restore(piecesOf(backup), { replace: true });
    expect(await there.jobs.list({ limit: 200 })).toHaveLength(46);
    const demoOnly = await get().freshStore();
    await demoOnly.jobs.create(ANNA, { demo: true, sections: {} });
    await demoOnly.restore(piecesOf(backup), { replace: false });
    expect(await demoOnly.jobs.list({ limit: 200 })).toHaveLength(46);
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
    await fill(here);
    const mine = await there.jobs.create(ANNA, { sections: { vehicle: { name: 'stays' } } });
    const packed = await bytesOf(here.backup());
    const plain = gunzipSync(packed);
    const flipped = Buffer.from(plain);
    flipped[plain.indexOf('car 17')]! ^= 1;
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
    expect(await there.jobs.list({ limit: 200 })).toHaveLength(46);
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
    const { rmSync } = await import('node:fs');
    rmSync(store.files.path(entry.sha256));
    await expect(bytesOf(store.backup())).rejects.toMatchObject({ code: 'missing-file' });
  });
}
