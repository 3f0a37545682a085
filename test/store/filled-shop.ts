/** An invented shop with something in every table, and how to read all of it back. */
import { inputsSha256 } from '../../src/jobs/inputs-hash.ts';
import type { Store } from '../../src/jobs/open-store.ts';
import {
  ANNA,
  BERT,
  finding,
  keptRecording,
  MOMENT,
  piecesOf,
  sampleCar,
  sampleCheck,
  sampleMonitor,
  sha256Of,
} from './samples.ts';

export const RECORDING_TEXT = 'a,b\n1,2\n';
export const MORE_JOBS = 3;

export async function fillShop(store: Store): Promise<void> {
  const { jobs, files } = store;
  let job = await jobs.create(ANNA, {
    sections: {
      complaint: { words: 'Odd \0 \ud800 "\\" text', types: ['smell'] },
      codes: [{ code: 'P0442', status: 'stored', freezeFrame: [{ name: 'load', value: '12.5', unit: '%' }] }],
      car: sampleCar,
      recordings: [await keptRecording(files, RECORDING_TEXT)],
    },
  });
  const made = finding(inputsSha256(job));
  // Its curves are many thousand numbers; here a short one will do.
  const sheet = { ...made.sheet, finding: { ...made.sheet.finding, overlays: [] } };
  await jobs.addFinding(job.id, ANNA, { ...made, sheet });
  job = await jobs.change(job.id, BERT, 2, { section: 'vehicle', value: { name: 'Blue', odometerKm: 123456.7 } });
  job = await jobs.change(job.id, BERT, 3, { section: 'checks', value: [sampleCheck] });
  job = await jobs.undo(job.id, ANNA, 4);
  const monitor = sampleMonitor(job.recordings[0]!.id);
  job = await jobs.change(job.id, ANNA, job.version, { section: 'monitor', value: monitor });
  const { sha256 } = await files.keep(piecesOf('%PDF-1.7'));
  const id = '3f0e6a52-2f7c-4a1f-8d8e-0f9f53a0b333';
  await jobs.addHandOver(job.id, ANNA, { id, madeAt: MOMENT, by: 'Anna', pdfSha256: sha256, language: 'de' });
  for (let n = 0; n < MORE_JOBS; n++) {
    await jobs.create(ANNA, { demo: n === 0, sections: { vehicle: { name: `car ${n}` } } });
  }
  const owner = await store.users.create({ name: 'Olga', role: 'owner', passwordHash: '$argon2id$x' });
  await store.logins.start(owner.id, sha256Of('cookie'), new Date('2099-01-01T00:00:00Z'));
  await store.shares.make(ANNA, { jobId: job.id, tokenSha256: sha256Of('link'), label: 'the owner' });
  await store.securityLog.write({ kind: 'signed-in', actor: 'Olga', address: '::1', detail: { n: 1 } });
  await store.settings.write(ANNA, 'shop', { name: 'Corner garage' });
}

export async function readShop(store: Store) {
  const list = await store.jobs.list({ limit: 200 });
  const inOrder = <T>(ask: (id: string) => Promise<T>) => Promise.all(list.map(({ id }) => ask(id)));
  return {
    list,
    jobs: await inOrder((id) => store.jobs.read(id)),
    histories: await inOrder((id) => store.jobs.history(id)),
    users: await store.users.list(),
    shares: (await inOrder((id) => store.shares.list(id))).flat(),
    log: await store.securityLog.read(),
    settings: await store.sql.selectFrom('settings').select(['name', 'value', 'changed_by']).execute(),
    files: await store.sql.selectFrom('files').select(['sha256', 'bytes']).orderBy('sha256').execute(),
  };
}
