/**
 * Exact dynamic programming over all orders of checks and repairs, for small problems: an independent oracle. Written from
 * the definition; shares nothing with the planner but the shape of the problem. What is done and seen numbers a state.
 */
import type { PlanProblem, Situation } from '../../src/checks/planner/problem.ts';

export function exactCost(problem: PlanProblem, start: Situation): number {
  const { checks, repairs, ends, setupCosts } = problem;
  if (start.belief.length !== problem.states || start.done.some((d) => d !== 0)) {
    throw new Error('the oracle starts at the beginning of a problem');
  }
  // one digit for each action: 0 open, 1 + outcome; a repair has 0 and 1
  const place: number[] = [];
  let size = 1;
  for (const digits of [...checks.map((c) => 1 + c.likelihood.length), ...repairs.map(() => 2)]) {
    place.push(size);
    size *= digits;
  }
  const known = new Float64Array(size).fill(Number.NaN);
  const done = new Array<boolean>(place.length).fill(false);
  const payFor = (needed: number, paid: number) => {
    let sum = 0;
    for (let bit = 0; bit < setupCosts.length; bit++) {
      if ((needed >> bit) & 1 && !((paid >> bit) & 1)) sum += setupCosts[bit]!;
    }
    return sum;
  };

  /** Weights: joint probability of each state with what happened. */
  function value(weights: Float64Array, number: number, paid: number): number {
    let mass = 0;
    for (const w of weights) mass += w;
    if (mass < 1e-12) return 0;
    if (!Number.isNaN(known[number]!)) return known[number]!;
    let best = Number.POSITIVE_INFINITY;
    for (const end of ends)
      best = Math.min(
        best,
        weights.reduce((sum, w, s) => sum + w * end.cost[s]!, 0),
      );
    for (let k = 0; k < checks.length; k++) {
      const check = checks[k]!;
      if (done[k] || check.after.some((j) => !done[j])) continue;
      done[k] = true;
      let cost = (check.cost + payFor(check.setups, paid)) * mass;
      check.likelihood.forEach((given, o) => {
        cost += value(
          weights.map((w, s) => w * given[s]!),
          number + (1 + o) * place[k]!,
          paid | check.setups,
        );
      });
      done[k] = false;
      best = Math.min(best, cost);
    }
    for (let r = 0; r < repairs.length; r++) {
      const repair = repairs[r]!;
      const i = checks.length + r;
      if (done[i] || weights.every((w, s) => w === 0 || repair.fixes[s] !== 1)) continue;
      done[i] = true;
      const left = weights.map((w, s) => (repair.fixes[s] === 1 ? 0 : w));
      const cost =
        (repair.cost + payFor(repair.setups, paid)) * mass + value(left, number + place[i]!, paid | repair.setups);
      done[i] = false;
      best = Math.min(best, cost);
    }
    known[number] = best;
    return best;
  }
  return value(start.belief, 0, start.setups);
}
