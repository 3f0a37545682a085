/**
 * Single independent faults, each with a step that finds and removes it for certain: trying in the order of probability
 * over cost is optimal (Heckerman, Breese and Rommelse, Decision-theoretic troubleshooting, Communications of the ACM 38,
 * 1995; Jensen et al., 2001). Its expected cost is written out here from that theorem.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { startOf } from '../../src/checks/planner/problem.ts';
import { PlanSearch } from '../../src/checks/planner/search.ts';

/** Expected cost of trying in the order of probability over cost. */
function orderedCost(parts: readonly { readonly p: number; readonly cost: number }[]): number {
  let left = 1;
  let sum = 0;
  for (const { p, cost } of [...parts].sort((a, b) => b.p / b.cost - a.p / a.cost)) {
    sum += left * cost;
    left -= p;
  }
  return sum;
}

const part = fc.record({ weight: fc.integer({ min: 1, max: 1000 }), cost: fc.integer({ min: 1, max: 300 }) });

test('the planner costs what the order of probability over cost costs', () => {
  fc.assert(
    fc.property(fc.array(part, { minLength: 1, maxLength: 8 }), (drawn) => {
      const total = drawn.reduce((sum, { weight }) => sum + weight, 0);
      const parts = drawn.map(({ weight, cost }) => ({ p: weight / total, cost }));
      const problem = {
        states: parts.length,
        checks: [],
        repairs: parts.map(({ cost }, r) => ({
          id: `part ${r}`,
          cost,
          setups: 0,
          fixes: Uint8Array.from(parts, (_, s) => (s === r ? 1 : 0)),
        })),
        ends: [{ id: 'send away', cost: new Float64Array(parts.length).fill(1e7) }],
        setupCosts: [],
      };
      const search = new PlanSearch(
        problem,
        startOf(
          problem,
          Float64Array.from(parts, ({ p }) => p),
        ),
      );
      search.run({ expansions: 200 });
      const expected = orderedCost(parts);
      expect(Math.abs(search.root.upper - expected)).toBeLessThan(1e-6 * expected);
      expect(search.root.lower).toBeLessThanOrEqual(expected * (1 + 1e-9));
    }),
    { numRuns: 60 },
  );
});

/** Checks that find their one fault for certain, before a repair whose price is the same whoever is at fault. */
test('perfect checks of single faults are taken in the order of probability over cost', () => {
  fc.assert(
    fc.property(fc.array(part, { minLength: 2, maxLength: 5 }), (drawn) => {
      const total = drawn.reduce((sum, { weight }) => sum + weight, 0);
      const parts = drawn.map(({ weight, cost }) => ({ p: weight / total, cost }));
      const repairCost = 1e6;
      const problem = {
        states: parts.length,
        checks: parts.map(({ cost }, k) => {
          const found = Float64Array.from(parts, (_, s) => (s === k ? 1 : 0));
          return { id: `check ${k}`, cost, setups: 0, after: [], likelihood: [found, found.map((x) => 1 - x)] };
        }),
        repairs: parts.map((_, r) => ({
          id: `part ${r}`,
          cost: repairCost,
          setups: 0,
          fixes: Uint8Array.from(parts, (_, s) => (s === r ? 1 : 0)),
        })),
        ends: [{ id: 'send away', cost: new Float64Array(parts.length).fill(1e9) }],
        setupCosts: [],
      };
      const search = new PlanSearch(
        problem,
        startOf(
          problem,
          Float64Array.from(parts, ({ p }) => p),
        ),
      );
      search.run({ expansions: 600 });
      // the last one standing needs no check: leaving out each in turn gives the best
      const best = Math.min(...parts.map((spared) => orderedCost(parts.filter((one) => one !== spared)) + repairCost));
      expect(Math.abs(search.root.upper - best)).toBeLessThan(1e-6 * best);
    }),
    { numRuns: 25 },
  );
});
