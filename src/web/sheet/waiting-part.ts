import type { Job, JobSummary } from '../../jobs/record/job.ts';
import { waitsFor } from '../../jobs/record/waits-for.ts';

/** Addresses of the sheet's parts. */
export const PARTS = [
  'complaint',
  'car',
  'recordings',
  'finding',
  'next-check',
  'repair',
  'proof',
  'monitor',
  'hand-over',
] as const;
export type Part = (typeof PARTS)[number];

const PART_OF: Readonly<Record<JobSummary['waitsFor'], Part | null>> = {
  complaint: 'complaint',
  car: 'car',
  recording: 'recordings',
  finding: 'finding',
  check: 'next-check',
  repair: 'repair',
  proof: 'proof',
  'hand-over': 'hand-over',
  nothing: null,
};

/** The part that the job now turns on. */
export const waitingPart = (job: Job): Part | null => PART_OF[waitsFor(job)];
