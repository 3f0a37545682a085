/**
 * Exact dynamic programming over all orders of checks and repairs, for small problems: an independent oracle. Written from
 * the definition; shares nothing with the planner but the shape of the problem.
 */
import type { PlanProblem, Situation } from '../../src/checks/planner/problem.ts';

export function exactCost(problem: PlanProblem, start: Situation): number {
  const { checks, repairs, ends, setupCosts, states } = problem;
  const memo = new Map<string, number>();
  const payFor = (needed: number, paid: number) =>
    setupCosts.reduce((sum, c, bit) => sum + ((needed >> bit) & 1 && !((paid >> bit) & 1) ? c : 0), 0);

  /** Unnormalised weights: joint probability with what happened. */
  function value(weights: readonly number[], done: readonly number[], paid: number): number {
    const mass = weights.reduce((a, b) => a + b, 0);
    if (mass < 1e-12) return 0;
    const key = done.join(',');
    const known = memo.get(key);
    if (known !== undefined) return known;
    let best = Math.min(...ends.map((end) => weights.reduce((sum, w, s) => sum + w * end.cost[s]!, 0)));
    checks.forEach((check, k) => {
      if (done[k] !== 0 || check.after.some((j) => done[j] === 0)) return;
      let cost = (check.cost + payFor(check.setups, paid)) * mass;
      check.likelihood.forEach((given, o) => {
        cost += value(
          weights.map((w, s) => w * given[s]!),
          done.map((d, i) => (i === k ? o + 1 : d)),
          paid | check.setups,
        );
      });
      best = Math.min(best, cost);
    });
    repairs.forEach((repair, r) => {
      const i = checks.length + r;
      if (done[i] !== 0) return;
      const left = weights.map((w, s) => (repair.fixes[s] === 1 ? 0 : w));
      if (left.every((w, s) => w === weights[s])) return;
      const cost =
        (repair.cost + payFor(repair.setups, paid)) * mass +
        value(
          left,
          done.map((d, j) => (j === i ? 1 : d)),
          paid | repair.setups,
        );
      best = Math.min(best, cost);
    });
    memo.set(key, best);
    return best;
  }
  if (start.belief.length !== states) throw new Error(`belief of ${start.belief.length} states, expected ${states}`);
  return value([...start.belief], [...start.done], start.setups);
}
