/** What a practice folder knows of its own cases: the truth and the bounds, when they are there. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

const truthSchema = z.object({
  case: z.string(),
  procedure: z.string(),
  /** The first fault. */
  fault: z.string(),
  faults: z.array(z.string()).min(1),
  also_accept: z.array(z.string()),
  confounder: z.string(),
  /** Total hole to ambient, equivalent diameter; 0 where there is none. */
  leak_d_equiv_mm: z.number(),
});
export type Truth = z.infer<typeof truthSchema>;

/** Bound of ln(diameter) by case. */
export type Bounds = ReadonlyMap<string, number>;

const boundsSchema = z.object({ cases: z.array(z.object({ case: z.string(), crb_ln_d: z.number().optional() })) });

/** The truth of a folder; undefined where the folder does not tell it. */
export function readTruth(folder: string): Truth[] | undefined {
  const file = join(folder, 'truth.jsonl');
  if (!existsSync(file)) return undefined;
  return readJsonLines(file, truthSchema);
}

export function readBounds(folder: string): Bounds {
  const file = join(folder, 'bounds.json');
  if (!existsSync(file)) return new Map();
  const { cases } = boundsSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
  return new Map(cases.flatMap((c) => (c.crb_ln_d === undefined ? [] : [[c.case, c.crb_ln_d] as const])));
}

export function readJsonLines<T>(file: string, schema: z.ZodType<T>): T[] {
  return readFileSync(file, 'utf8')
    .split('\n')
    .flatMap((line, i) => {
      if (line.trim() === '') return [];
      try {
        return [schema.parse(JSON.parse(line))];
      } catch (error) {
        throw new Error(`${file}, line ${i + 1}: ${error instanceof Error ? error.message : String(error)}`);
      }
    });
}
