/** A finding of a job as it stands, in a worker thread. */
import { createHash, randomUUID } from 'node:crypto';
import { inputsSha256 } from '../../jobs/inputs-hash.ts';
import type { Actor } from '../../jobs/job-store.ts';
import { canonicalJson } from '../../jobs/record/finding-inputs.ts';
import type { Job, RecordingEntry } from '../../jobs/record/job.ts';
import type { Work } from '../contract/work.ts';
import type { Parts } from '../parts.ts';
import { Refusal } from '../refusal.ts';
import { handChecksFrom } from './hand-checks.ts';
import { knownOf } from './known-of.ts';

/** Before and after a repair are two states of a car: one finding is made from recordings of one of them. */
function recordingsFor(job: Job, taken: RecordingEntry['taken'] | undefined): readonly RecordingEntry[] {
  const used = job.recordings.filter(({ useInFinding }) => useInFinding);
  const of = (which: RecordingEntry['taken']) => used.filter((entry) => entry.taken === which);
  if (taken !== undefined) return of(taken);
  const before = of('before-repair');
  return before.length > 0 ? before : of('after-repair');
}

export function startFinding(
  { store, board, bell, workshop, readings, program }: Parts,
  job: Job,
  actor: Actor,
  taken: RecordingEntry['taken'] | undefined,
  onFault: (error: unknown) => void,
): Work {
  const { car } = job;
  if (car === null) {
    throw new Refusal('not-possible', 'Nothing is known of the car yet.', {
      expected: 'at least the layout of its vapour system',
      advice: 'Fill in the part "car" first.',
    });
  }
  const entries = recordingsFor(job, taken);
  if (entries.length === 0) {
    throw new Refusal('not-possible', 'There is no recording to make a finding from.', {
      advice: 'Drop a recording on the sheet, or mark one of those there for use in the finding.',
    });
  }
  const known = knownOf(job, entries);
  const inputs = inputsSha256(job);
  return board.start({
    kind: 'finding',
    jobId: job.id,
    inputsSha256: `${inputs} ${taken ?? ''}`,
    ...(taken === undefined ? {} : { taken }),
    onFault,
    run: async (signal, onProgress) => {
      const madeAt = new Date().toISOString();
      const sheet = await workshop.run(
        'finding',
        {
          car,
          carSha256: createHash('sha256').update(canonicalJson(car)).digest('hex'),
          recordings: entries.map((entry) => ({
            label: entry.label,
            reading: readings.inputsOf(car, entry),
            phases: entry.phases ?? [],
          })),
          complaints: known.complaints,
          codes: known.codes,
          handChecks: handChecksFrom(known.checks),
          program,
          madeAt,
        },
        { signal, onProgress },
      );
      const id = randomUUID();
      bell.jobChanged(await store.jobs.addFinding(job.id, actor, { id, madeAt, inputsSha256: inputs, sheet }));
      return id;
    },
  });
}
