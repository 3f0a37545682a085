/** `restore`: takes a backup in, into an empty data folder or in place of what is there. */
import { createReadStream } from 'node:fs';
import { access } from 'node:fs/promises';
import { cannotRead } from './failure.ts';
import { withStore } from './open-data.ts';
import { printJson, printText } from './output.ts';

export interface RestoreOptions {
  readonly data?: string;
  readonly replace?: boolean;
  readonly json?: boolean;
}

export async function restoreCommand(file: string, { data, replace = false, json }: RestoreOptions): Promise<void> {
  await access(file).catch((error: unknown) => {
    throw cannotRead(file, error);
  });
  const restored = await withStore(data, (store) =>
    store.restore(createReadStream(file) as AsyncIterable<Buffer>, { replace }),
  );
  if (json === true) printJson({ schema: 'vaporwright-restore-result-1', ...restored });
  else
    printText(`Restored: ${restored.jobs} jobs and ${restored.files} files, as they were on ${restored.madeAt} UTC.`);
}
