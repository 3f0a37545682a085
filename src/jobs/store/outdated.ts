/** A finding is outdated when what it was made from, or the program that made it, has changed. */
import { inputsSha256 } from '../inputs-hash.ts';
import type { Job, JobFinding } from '../record/job.ts';

type Made = Pick<JobFinding, 'inputsSha256' | 'sheet'>;

/** `program` undefined: only the inputs count. */
export function withOutdated(job: Job, program: string | undefined): Job {
  const present = inputsSha256(job);
  const isOutdated = (finding: Made) =>
    finding.inputsSha256 !== present || (program !== undefined && finding.sheet.program !== program);
  return { ...job, findings: job.findings.map((finding) => ({ ...finding, outdated: isOutdated(finding) })) };
}
