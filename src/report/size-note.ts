/** Why the size drawn beside the limits is another one than the sentence of the finding says. */
import type { CauseId, Finding, Interval } from '../diagnosis/finding.ts';
import { holeOf } from './hole.ts';
import { firstCause } from './words.ts';

export type SizeNote =
  /** The first cause is no hole to the open air: what is sized is what may be open beside it. */
  | { readonly kind: 'beside'; readonly cause: CauseId }
  /** The first cause has a size of its own; what is drawn is weighed over all causes, also those without such a hole. */
  | { readonly kind: 'weighed'; readonly cause: CauseId; readonly own: Interval };

/** Below this the two print alike or nearly so. */
const SAME_SHARE = 0.02;

export function sizeNote(finding: Pick<Finding, 'verdict' | 'causes' | 'diameterMm'>): SizeNote | null {
  const { verdict, diameterMm } = finding;
  const first = firstCause(finding);
  if (verdict !== 'fault' || first === null || diameterMm === null) return null;
  const own = holeOf(first);
  if (own === undefined) return { kind: 'beside', cause: first.id };
  const apart = (['median', 'lo90', 'hi90'] as const).some(
    (key) => Math.abs(own[key] / diameterMm[key] - 1) > SAME_SHARE,
  );
  return apart ? { kind: 'weighed', cause: first.id, own } : null;
}
