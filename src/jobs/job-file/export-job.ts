/** Writes a job as one JSON file, piece by piece: it may hold many long recordings. */
import type { JobStore } from '../job-store.ts';
import { JOB_FILE_FORMAT } from '../record/job-file.ts';
import type { StoreContext } from '../store/store-context.ts';
import { enclose } from './enclosed-file.ts';

async function bytesOf(pieces: AsyncIterable<Uint8Array>): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  for await (const piece of pieces) parts.push(piece);
  return Buffer.concat(parts);
}

/** Text of the file. @throws NoSuchJob before the first piece */
export async function* exportJob(context: StoreContext, jobs: JobStore, id: string): AsyncGenerator<string> {
  const job = await jobs.read(id);
  // Changes made since the job was read are not part of what is exported.
  const history = (await jobs.history(id)).filter(({ version }) => version <= job.version);
  const named = await context.run((sql) =>
    sql.selectFrom('job_files').select('sha256').where('job_id', '=', id).orderBy('sha256').execute(),
  );
  const head = {
    schema: JOB_FILE_FORMAT,
    program: context.program ?? null,
    exportedAt: context.now().toISOString(),
    job,
    history,
  };
  yield `${JSON.stringify(head, null, 1).slice(0, -2)},\n "files": [`;
  let comma = '';
  for (const { sha256 } of named) {
    const file = enclose(sha256, await bytesOf(context.files.open(sha256)));
    yield `${comma}\n  ${JSON.stringify(file)}`;
    comma = ',';
  }
  yield '\n ]\n}\n';
}
