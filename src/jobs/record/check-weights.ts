/** What a hand check by the technician's own judgement is worth in the finding. */
import type { CHECK_STRENGTHS } from './job.ts';

/**
 * How many times likelier the result is under a cause it speaks for than under one it says nothing of (for one it
 * speaks against: how many times less likely). Judgement; no published source.
 */
export const CHECK_LIKELIHOOD_RATIO: Readonly<Record<(typeof CHECK_STRENGTHS)[number], number>> = {
  weak: 2,
  clear: 5,
  strong: 20,
};
