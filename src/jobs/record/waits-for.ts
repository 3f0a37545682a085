/** What a job waits for: the first part of the sheet, read from the top, that is still open. */
import type { Job, JobSummary } from './job.ts';

type Facts = Pick<
  Job,
  'closed' | 'complaint' | 'codes' | 'car' | 'recordings' | 'findings' | 'checks' | 'repairs' | 'proof' | 'handOvers'
>;

export function waitsFor(job: Facts): JobSummary['waitsFor'] {
  if (job.closed) return 'nothing';
  if (job.complaint.words === '' && job.complaint.types.length === 0 && job.codes.length === 0) return 'complaint';
  if (job.car === null) return 'car';
  if (job.recordings.length === 0) return 'recording';
  const newest = job.findings.at(-1);
  if (newest === undefined || newest.outdated) return 'finding';
  if (job.repairs.length === 0) {
    if (newest.sheet.finding.verdict === 'no-fault-seen') return 'hand-over';
    return job.checks.length === 0 ? 'check' : 'repair';
  }
  if (job.proof === null || job.proof.verdict === 'not-held') return 'proof';
  return job.handOvers.length === 0 ? 'hand-over' : 'nothing';
}
