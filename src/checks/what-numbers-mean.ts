/** What the numbers of a check come to by themselves: for whoever has read an instrument and not a size. */
import type { Interval } from '../diagnosis/finding.ts';
import { DERIVED_IDS, DERIVED_KINDS, type Derived } from './likelihood/derived.ts';
import type { Meaning } from './likelihood/numeric.ts';

export type Meant =
  /** An equivalent diameter, mm, of the whole system or of a section by its name. */
  | { readonly kind: 'diameter'; readonly id: string; readonly sizeMm: Interval }
  /** SI. */
  | { readonly kind: (typeof DERIVED_KINDS)[Derived]; readonly id: Derived; readonly value: number };

/** `whole` goes by the words that the sections go by. */
const WHOLE = 'whole system';

export function whatNumbersMean({ diametersMm = {}, derived = {} }: Meaning): readonly Meant[] {
  return [
    ...Object.entries(diametersMm).map(
      ([id, sizeMm]): Meant => ({ kind: 'diameter', id: id === 'whole' ? WHOLE : id, sizeMm }),
    ),
    ...DERIVED_IDS.flatMap((id): Meant[] => {
      const value = derived[id];
      return value === undefined ? [] : [{ kind: DERIVED_KINDS[id], id, value }];
    }),
  ];
}
