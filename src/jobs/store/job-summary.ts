/** What the list of jobs shows and searches, kept in the job's own row. */
import type { Job } from '../record/job.ts';
import { waitsFor } from '../record/waits-for.ts';
import { plainText, searchable } from './search-text.ts';

const FIRST_WORDS = 200;
/** The cut may go through a character of two units. */
const HALF_A_PAIR = /[\ud800-\udbff]$/;

export function summaryColumns(job: Job) {
  const newest = job.findings.at(-1);
  const leading = newest?.sheet.finding.causes[0];
  const { vehicle, complaint } = job;
  const codes = job.codes.map(({ code }) => code);
  return {
    vehicle: plainText(vehicle.name),
    registration: vehicle.registration === undefined ? null : plainText(vehicle.registration),
    complaint: plainText(complaint.words).slice(0, FIRST_WORDS).replace(HALF_A_PAIR, ''),
    codes,
    search: searchable(
      [job.number, vehicle.name, vehicle.owner, vehicle.registration, vehicle.vin, complaint.words, ...codes]
        .filter((part) => part !== undefined)
        .join('\n'),
    ),
    // As if the newest finding were by the present program: the list asks for that when it is read.
    waits_for: waitsFor(job),
    finding_verdict: newest?.sheet.finding.verdict ?? null,
    finding_cause: leading?.id ?? null,
    finding_probability: leading?.probability ?? null,
    finding_program: newest?.sheet.program ?? null,
  };
}
