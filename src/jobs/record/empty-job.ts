/** The sections of a job that has just been opened. */
import type { Section, SectionName } from './job.ts';
import { EMPTY_MONITOR } from './monitor.ts';

export type Sections = { readonly [Name in SectionName]: Section<Name> };

export const EMPTY_SECTIONS: Sections = {
  complaint: { words: '', types: [] },
  codes: [],
  vehicle: { name: '' },
  car: null,
  recordings: [],
  checks: [],
  repairs: [],
  proof: null,
  monitor: EMPTY_MONITOR,
  attachments: [],
  notes: [],
};
