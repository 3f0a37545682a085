/**
 * A backup is one gzip-packed tar: `backup.json` first, then `tables/NAME/NUMBER.jsonl` (a row a line), then
 * `files/SHA256` (raw files), and `end.json` last with counts and hashes, so that a cut-off file is seen as such.
 */
import { z } from 'zod';

export const BACKUP_FORMAT = 'vaporwright-backup-1';

/** In an order in which rows only name rows that are there already. */
export const BACKED_UP = [
  'counters',
  'jobs',
  'job_sections',
  'findings',
  'hand_overs',
  'history',
  'files',
  'job_files',
  'users',
  'shares',
  'security_log',
  'settings',
] as const;

/** Not in a backup: who is signed in and what is being made just now. */
export const OF_THE_MOMENT = ['sessions', 'open_work'] as const;

export const beginningSchema = z.object({
  format: z.literal(BACKUP_FORMAT),
  program: z.string().nullable(),
  madeAt: z.iso.datetime(),
  schemaVersion: z.int().positive().describe('Of the tables'),
});
export type Beginning = z.infer<typeof beginningSchema>;

export const endSchema = z.object({
  rows: z.record(z.string(), z.int().nonnegative()),
  rowsSha256: z.string().describe('Of all rows in the order in which they are here, with their line ends'),
  files: z.int().nonnegative(),
});
export type End = z.infer<typeof endSchema>;
