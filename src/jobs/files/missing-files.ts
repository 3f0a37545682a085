/** Raw files that the database names and the folder does not hold: taken in by a program with another data folder, or lost. */
import type { StoreContext } from '../store/store-context.ts';

/** Looked at one after the other; as many as a shop takes in in years. */
const MOST_LOOKED_AT = 20_000;

export async function countMissingFiles({ run, files }: StoreContext): Promise<number> {
  const rows = await run((sql) =>
    sql.selectFrom('files').select('sha256').orderBy('kept_at', 'desc').limit(MOST_LOOKED_AT).execute(),
  );
  let missing = 0;
  for (const { sha256 } of rows) if (!(await files.has(sha256))) missing += 1;
  return missing;
}
