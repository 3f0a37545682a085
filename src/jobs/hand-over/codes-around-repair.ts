/** The codes as they stood before the first repair and as they were read again after it, from the job's history. */
import type { HandOver } from '../../report/hand-over/hand-over.ts';
import { type HistoryEntry, type Job, SECTIONS } from '../record/job.ts';

const hasEntries = (value: unknown): boolean => Array.isArray(value) && value.length > 0;

export function codesAroundRepair(job: Job, history: readonly HistoryEntry[]): HandOver['codes'] {
  const inOrder = [...history].sort((one, other) => one.version - other.version);
  const repair = inOrder.find(({ section, after }) => section === 'repairs' && hasEntries(after));
  const change = inOrder.find(
    ({ section, version }) => section === 'codes' && repair !== undefined && version > repair.version,
  );
  const before = change === undefined ? undefined : SECTIONS.codes.safeParse(change.before);
  // A history that does not say what stood there before leaves the comparison out rather than guess it.
  return before?.success === true ? { before: before.data, after: job.codes } : { before: job.codes, after: null };
}
