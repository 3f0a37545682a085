/** `export-job` and `import-job`: one job with its history and files as one JSON file. */
import { readFile } from 'node:fs/promises';
import { EXIT } from './exit-codes.ts';
import { cannotRead, Failure } from './failure.ts';
import { makeFolderFor } from './make-folder.ts';
import { withStore } from './open-data.ts';
import { printJson, printText } from './output.ts';
import { writeStream } from './write-stream.ts';

export interface JobFileOptions {
  readonly data?: string;
  readonly json?: boolean;
}

/** How many jobs are looked through at a time. */
const PAGE = 200;

export async function exportJobCommand(number: number, file: string, { data, json }: JobFileOptions): Promise<void> {
  makeFolderFor(file);
  const bytes = await withStore(data, async (store) => {
    let before: string | undefined;
    for (;;) {
      const jobs = await store.jobs.list({ limit: PAGE, ...(before === undefined ? {} : { before }) });
      const found = jobs.find((job) => job.number === number);
      if (found !== undefined) return writeStream(file, store.exportJob(found.id));
      if (jobs.length < PAGE) break;
      before = jobs.at(-1)?.changedAt;
    }
    throw new Failure(EXIT.input, `there is no job number ${number}`, {
      advice: 'The number stands at the head of the job sheet.',
    });
  });
  if (json === true) printJson({ schema: 'vaporwright-export-result-1', number, file, bytes });
  else printText(`Written: ${file}`);
}

export async function importJobCommand(file: string, { data, json }: JobFileOptions): Promise<void> {
  const text = await readFile(file, 'utf8').catch((error: unknown) => {
    throw cannotRead(file, error);
  });
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new Failure(EXIT.input, `${file} is not JSON`, {
      file,
      ...(error instanceof Error ? { found: error.message } : {}),
      expected: 'a job as "export-job" or the pages write it',
    });
  }
  const job = await withStore(data, (store) => store.importJob({ name: 'command line' }, value));
  if (json === true) printJson({ schema: 'vaporwright-import-result-1', id: job.id, number: job.number });
  else printText(`Taken in as job ${job.number}.`);
}
