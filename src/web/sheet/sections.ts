/** Names of the sections that are saved as a whole; the record's own list would bring its checks into the page. */
import type { SectionName } from '../../jobs/record/job.ts';

const NAMES: Readonly<Record<SectionName, true>> = {
  complaint: true,
  codes: true,
  vehicle: true,
  car: true,
  recordings: true,
  checks: true,
  repairs: true,
  proof: true,
  monitor: true,
  attachments: true,
  notes: true,
};
export const SECTION_NAMES = Object.keys(NAMES) as readonly SectionName[];
