/** The files that ship with the demo shop: recordings, findings made from them, one hand-over document. */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { z } from 'zod';
import { type StoredSheet, storedSheetSchema } from '../../report/sheet.ts';
import type { DemoJob } from './demo-job.ts';
import type { DemoRecordingName } from './scenarios.ts';

export const recordingFile = (name: DemoRecordingName): string => `${name}.csv.gz`;
export const findingsFile = (key: DemoJob['key']): string => `${key}.findings.json.gz`;
export const handOverFile = (key: DemoJob['key']): string => `${key}.hand-over.pdf`;

export interface ShippedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly sha256: string;
}

export async function shippedFile(folder: string, name: string): Promise<ShippedFile> {
  const bytes = await readFile(join(folder, name));
  return { name, bytes, sha256: createHash('sha256').update(bytes).digest('hex') };
}

/** Findings of a job in the order in which the job names them. */
export async function shippedFindings(folder: string, key: DemoJob['key']): Promise<readonly StoredSheet[]> {
  const { bytes } = await shippedFile(folder, findingsFile(key));
  return z.array(storedSheetSchema).parse(JSON.parse(gunzipSync(bytes).toString('utf8')));
}
