/** Takes a job file in: checked as a whole before anything is written. */
import type { Actor, JobStore, KeptFile } from '../job-store.ts';
import type { Job } from '../record/job.ts';
import { type JobFile, jobFileSchema } from '../record/job-file.ts';
import type { StoreContext } from '../store/store-context.ts';
import { StoreProblem } from '../store-problem.ts';
import { disclose } from './enclosed-file.ts';

const ADVICE = 'Export the job again with the program that it comes from, and import that file.';

function parse(value: unknown): JobFile {
  const parsed = jobFileSchema.safeParse(value);
  if (parsed.success) return parsed.data;
  const [first, ...more] = parsed.error.issues;
  const path = first?.path.join('.') ?? '';
  throw new StoreProblem(
    'bad-file',
    `This is not a job file that this program can read: at "${path}": ${first?.message}${more.length > 0 ? ` (and ${more.length} more)` : ''}.`,
    { where: path, advice: ADVICE },
  );
}

/** Every file that the job names must lie inside. */
function checkEnclosed(file: JobFile): void {
  const enclosed = new Set(file.files.map(({ sha256 }) => sha256));
  const { recordings, attachments, handOvers } = file.job;
  const wanted = [
    ...recordings.map(({ label, sha256 }) => ({ what: `recording "${label}"`, sha256 })),
    ...attachments.map(({ fileName, sha256 }) => ({ what: `attachment "${fileName}"`, sha256 })),
    ...handOvers.map(({ madeAt, pdfSha256 }) => ({ what: `hand-over of ${madeAt}`, sha256: pdfSha256 })),
  ];
  const missing = wanted.find(({ sha256 }) => !enclosed.has(sha256));
  if (missing === undefined) return;
  throw new StoreProblem(
    'bad-file',
    `The job file does not hold the raw file of its ${missing.what} (SHA-256 ${missing.sha256}).`,
    { where: missing.sha256, advice: ADVICE },
  );
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

/** `value`: the parsed JSON of the file. @throws StoreProblem; then nothing was written but raw files that nothing names */
export async function importJobFile(context: StoreContext, jobs: JobStore, actor: Actor, value: unknown): Promise<Job> {
  const file = parse(value);
  checkEnclosed(file);
  const contents = file.files.map(disclose);
  const kept: KeptFile[] = [];
  for (const bytes of contents) kept.push(await context.files.keep(once(bytes)));
  return jobs.import(actor, file.job, file.history, kept);
}
