/** What a finding takes from the job beside the recordings. */
import type { Job, RecordingEntry } from '../../jobs/record/job.ts';

/**
 * What was known before a repair speaks of the car as it was: once only recordings made after the repair count, so do only
 * the checks made after it.
 */
export function knownOf(
  job: Pick<Job, 'complaint' | 'codes' | 'checks' | 'repairs'>,
  entries: readonly Pick<RecordingEntry, 'taken'>[],
): Pick<Job, 'checks'> & { readonly complaints: Job['complaint']['types']; readonly codes: readonly string[] } {
  const repairedAt = job.repairs
    .map(({ at }) => at)
    .sort()
    .at(-1);
  if (repairedAt === undefined || entries.some(({ taken }) => taken === 'before-repair')) {
    return { complaints: job.complaint.types, codes: job.codes.map(({ code }) => code), checks: job.checks };
  }
  return { complaints: [], codes: [], checks: job.checks.filter(({ at }) => at > repairedAt) };
}
