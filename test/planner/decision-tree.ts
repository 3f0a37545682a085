/** Any decision tree, rolled back: chance nodes take the mean, decision nodes the least cost. */
export type DecisionTree =
  | { readonly kind: 'end'; readonly cost: number }
  | { readonly kind: 'chance'; readonly branches: readonly { readonly p: number; readonly next: DecisionTree }[] }
  | {
      readonly kind: 'decision';
      readonly options: readonly { readonly name: string; readonly cost: number; readonly next: DecisionTree }[];
    };

export interface RolledBack {
  readonly cost: number;
  /** Name of the best option where the root is a decision. */
  readonly choice?: string;
}

/** Throws where the probabilities of a chance node do not sum to 1. */
export function rollBack(tree: DecisionTree): RolledBack {
  if (tree.kind === 'end') return { cost: tree.cost };
  if (tree.kind === 'chance') {
    const total = tree.branches.reduce((sum, { p }) => sum + p, 0);
    if (Math.abs(total - 1) > 1e-6) throw new Error(`probabilities of a chance node sum to ${total}, expected 1`);
    return { cost: tree.branches.reduce((sum, { p, next }) => sum + p * rollBack(next).cost, 0) };
  }
  let best: RolledBack = { cost: Number.POSITIVE_INFINITY };
  for (const { name, cost, next } of tree.options) {
    const whole = cost + rollBack(next).cost;
    if (whole < best.cost) best = { cost: whole, choice: name };
  }
  return best;
}
