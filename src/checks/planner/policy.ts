/**
 * A plan cut loose from the point that it was worked out for. It says what to do after every outcome, and what it costs under
 * every state; so it can serve any other point where its steps are still open, at a cost that is linear in the belief.
 */
export interface Policy {
  /** Checks first, then repairs; -1: end. */
  readonly action: number;
  /** By outcome; a repair's 0 is "not fixed". Absent: it could not come where this was worked out; then end. */
  readonly next: readonly (Policy | undefined)[];
  /** Expected cost by state. */
  readonly cost: Float64Array;
  /** Bits of actions that it may take, and of those that it takes as done. */
  readonly uses: Bits;
  readonly needs: Bits;
  /** Bits of set-ups that it needs, and of those among them that it takes as paid. */
  readonly setups: number;
  readonly paid: number;
}

/** A set of actions, 32 in a word. */
export type Bits = readonly number[];

/** Expected cost. */
export function costAt({ cost }: Policy, belief: Float64Array): number {
  let sum = 0;
  for (let s = 0; s < belief.length; s++) sum += belief[s]! * cost[s]!;
  return sum;
}
