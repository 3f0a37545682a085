/** What a format expects where a file has a name that it does not know: the nearest one first. */
import { z } from 'zod';

/** Changes of one letter that turn one name into another (Levenshtein 1966). */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(changed, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}

/** A name is offered when no more than this share of its letters differs. */
const ALIKE = 0.4;

type Described = { readonly properties?: Record<string, Described>; readonly items?: Described };

/** Names that the format has at a place, in their order; none where the place has alternatives. */
function namesAt(schema: z.ZodType, path: readonly PropertyKey[]): string[] {
  let part: Described | undefined = z.toJSONSchema(schema, { io: 'input' }) as Described;
  for (const key of path) part = typeof key === 'number' ? part?.items : part?.properties?.[String(key)];
  return Object.keys(part?.properties ?? {});
}

/** Expectation in words: "did you mean …?" when one is near, then all names there. */
export function knownNames(schema: z.ZodType, path: readonly PropertyKey[], found: string): string {
  const names = namesAt(schema, path);
  if (names.length === 0) return 'only names that the format knows';
  const nearest = names.reduce((a, b) => (distance(b, found) < distance(a, found) ? b : a));
  const isAlike = distance(nearest, found) <= ALIKE * nearest.length;
  return isAlike ? `${nearest} (names that the format knows here: ${names.join(', ')})` : `one of ${names.join(', ')}`;
}
