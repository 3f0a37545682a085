/** What the commands that work on the data of the workbench print with --json. */
import { z } from 'zod';

const count = z.number().int().nonnegative();

export const serveResultSchema = z
  .object({
    schema: z.literal('vaporwright-serve-result-1'),
    address: z.url(),
    data: z.string().describe('The data folder'),
  })
  .describe('What "serve --json" prints once the workbench is open; it then runs on');

export const backupResultSchema = z
  .object({ schema: z.literal('vaporwright-backup-result-1'), file: z.string(), bytes: count })
  .describe('What "backup --json" prints');

export const restoreResultSchema = z
  .object({
    schema: z.literal('vaporwright-restore-result-1'),
    madeAt: z.string().describe('When the backup was made, ISO 8601 UTC'),
    jobs: count,
    files: count,
  })
  .describe('What "restore --json" prints');

export const exportResultSchema = z
  .object({
    schema: z.literal('vaporwright-export-result-1'),
    number: count.describe('Number of the job'),
    file: z.string(),
    bytes: count,
  })
  .describe('What "export-job --json" prints');

export const importResultSchema = z
  .object({
    schema: z.literal('vaporwright-import-result-1'),
    id: z.string(),
    number: count.describe('Number that the job has here'),
  })
  .describe('What "import-job --json" prints');
