/** Small troubleshooting problems drawn from a seed: causes, noisy checks, repairs, shared set-ups, prerequisites. */
import { type PlanProblem, type Situation, startOf } from '../../src/checks/planner/problem.ts';
import { randomStream } from '../../src/simulation/random.ts';

export function randomProblem(
  seed: number,
  states: number,
  checkCount: number,
  sendAway = 600,
  mostOutcomes = 3,
): { readonly problem: PlanProblem; readonly situation: Situation } {
  const random = randomStream(seed, 42);
  const u = (low: number, high: number) => low + (high - low) * random.uniform();
  const raw = Array.from({ length: states }, () => -Math.log(1 - random.uniform()) + 0.01);
  const total = raw.reduce((a, b) => a + b, 0);
  const problem: PlanProblem = {
    states,
    checks: Array.from({ length: checkCount }, (_, k) => {
      const outcomes = random.uniform() < 0.3 ? mostOutcomes : 2;
      const flags = Array.from({ length: states }, () =>
        random.uniform() < 0.4 ? 1 + Math.floor(u(0, outcomes - 1)) : 0,
      );
      const right = u(0.6, 0.98);
      return {
        id: `check ${k}`,
        cost: u(1, 25),
        setups: random.uniform() < 0.4 ? 1 : 0,
        after: k > 0 && random.uniform() < 0.15 ? [k - 1] : [],
        likelihood: Array.from({ length: outcomes }, (_, o) =>
          Float64Array.from(flags, (flag) => (flag === o ? right : (1 - right) / (outcomes - 1))),
        ),
      };
    }),
    repairs: Array.from({ length: states }, (_, r) => ({
      id: `repair ${r}`,
      cost: u(10, 160),
      setups: random.uniform() < 0.3 ? 2 : 0,
      // now and then one repair removes two causes
      fixes: Uint8Array.from({ length: states }, (_, s) => (s === r || (r % 4 === 3 && s === r - 1) ? 1 : 0)),
    })),
    ends: [{ id: 'send away', cost: new Float64Array(states).fill(sendAway) }],
    setupCosts: [u(0, 15), u(0, 80)],
  };
  return {
    problem,
    situation: startOf(
      problem,
      Float64Array.from(raw, (x) => x / total),
    ),
  };
}
