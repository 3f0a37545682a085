/** What the writer prints: a line once it is ready, then a line for each change that was acknowledged to it. */
import { createHash } from 'node:crypto';
import { canonicalJson } from '../../../src/jobs/record/finding-inputs.ts';
import { type Job, SECTION_NAMES } from '../../../src/jobs/record/job.ts';

export interface Acknowledged {
  readonly id: string;
  readonly version: number;
  /** Of everything in the job's sections. */
  readonly digest: string;
}

export const READY = 'ready';

export function digestOf(sections: Pick<Job, (typeof SECTION_NAMES)[number]>): string {
  const picked = Object.fromEntries(SECTION_NAMES.map((name) => [name, sections[name]]));
  return createHash('sha256').update(canonicalJson(picked)).digest('hex').slice(0, 16);
}
