/** Writes to a store without pause until it is killed. Arguments: data folder, seed. */
import { randomUUID } from 'node:crypto';
import { writeSync } from 'node:fs';
import { openStore } from '../../../src/jobs/open-store.ts';
import type { Job } from '../../../src/jobs/record/job.ts';
import { type Acknowledged, digestOf, READY } from './protocol.ts';

const [dataFolder = '', seed = '0'] = process.argv.slice(2);
const ANNA = { name: 'Anna' };
const CHANGES_PER_JOB = 12;

/** At once and by itself: what has been printed has been acknowledged, whatever comes after. */
const print = (line: string): void => {
  writeSync(1, `${line}\n`);
};

function acknowledge(job: Job): Job {
  const line: Acknowledged = { id: job.id, version: job.version, digest: digestOf(job) };
  print(JSON.stringify(line));
  return job;
}

async function* pieces(text: string): AsyncGenerator<Uint8Array> {
  yield Buffer.from(text);
}

const { jobs, files } = await openStore({ dataFolder });

async function step(job: Job, count: number): Promise<Job> {
  const mark = `${seed}-${job.number}-${count}`;
  switch (count % 5) {
    case 0:
      // Long enough for many pages of the database.
      return jobs.change(job.id, ANNA, job.version, {
        section: 'notes',
        value: [{ id: randomUUID(), at: job.createdAt, by: 'Anna', text: mark.repeat(700) }],
      });
    case 1: {
      const kept = await files.keep(pieces(`time_s\n${mark}\n`.repeat(300)));
      const entry = { id: randomUUID(), label: mark, fileName: 'a.csv', ...kept, receivedAt: job.createdAt };
      return jobs.addRecording(job.id, ANNA, { ...entry, useInFinding: true, taken: 'before-repair' });
    }
    case 2:
      return jobs.undo(job.id, ANNA, job.version);
    default:
      return jobs.change(job.id, ANNA, job.version, { section: 'vehicle', value: { name: mark } });
  }
}

print(READY);
for (;;) {
  let job = acknowledge(await jobs.create(ANNA, { sections: { vehicle: { name: `from ${seed}` } } }));
  for (let count = 0; count < CHANGES_PER_JOB; count++) job = acknowledge(await step(job, count));
}
