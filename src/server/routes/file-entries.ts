/** Entries that stand for a file are added by sending it; a change of the section may edit or take out, not invent. */
import { type SectionChange, VersionConflict } from '../../jobs/job-store.ts';
import type { Job } from '../../jobs/record/job.ts';
import type { SectionChangeRequest } from '../contract/jobs.ts';
import { Refusal } from '../refusal.ts';

/** What came with the file and stays. */
const FIXED = {
  recordings: ['fileName', 'sha256', 'bytes', 'receivedAt'],
  attachments: ['fileName', 'sha256', 'bytes', 'mediaType', 'at'],
} as const;

type FileSection = keyof typeof FIXED;
type FileChange = Extract<SectionChangeRequest, { readonly section: FileSection }>;
type Entry = Readonly<Record<string, unknown>>;

export function checkFileEntries(job: Job, version: number, change: FileChange & Pick<SectionChange, 'section'>): void {
  if (job.version !== version) throw new VersionConflict(job);
  const known = new Map<unknown, Entry>(job[change.section].map((entry) => [entry.id, entry]));
  change.value.forEach((entry: Entry, i) => {
    const before = known.get(entry.id);
    const place = `${change.section}, entry ${i + 1}`;
    if (before === undefined) {
      throw new Refusal('bad-request', `${place}: there is no such entry in this job.`, {
        found: String(entry.id),
        expected: 'an entry that was added by sending its file',
        advice: `Send the file to /jobs/:id/${change.section}.`,
      });
    }
    const changed = FIXED[change.section].find((name) => before[name] !== entry[name]);
    if (changed === undefined) return;
    throw new Refusal('bad-request', `${place}: "${changed}" came with the file and cannot be changed.`, {
      found: String(entry[changed]),
      expected: String(before[changed]),
    });
  });
  if (new Set(change.value.map(({ id }) => id)).size < change.value.length) {
    throw new Refusal('bad-request', `${change.section}: an entry stands there twice.`);
  }
}
