/** Backups of everything, and one job in one file. */
import { z } from 'zod';

export const restoredSchema = z.strictObject({
  madeAt: z.iso.datetime().describe('When the backup was made'),
  jobs: z.int().nonnegative(),
  files: z.int().nonnegative(),
});
