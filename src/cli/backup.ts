/** `backup`: everything as one file, also while the workbench is open. */
import { makeFolderFor } from './make-folder.ts';
import { withStore } from './open-data.ts';
import { printJson, printText } from './output.ts';
import { writeStream } from './write-stream.ts';

export interface BackupOptions {
  readonly data?: string;
  readonly json?: boolean;
}

export async function backupCommand(file: string, { data, json }: BackupOptions): Promise<void> {
  makeFolderFor(file);
  const bytes = await withStore(data, (store) => writeStream(file, store.backup()));
  if (json === true) printJson({ schema: 'vaporwright-backup-result-1', file, bytes });
  else printText(`Written: ${file} (${(bytes / 1e6).toFixed(1)} MB). Keep it on another disk.`);
}
