/** The search against exact dynamic programming on small problems. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PlanSearch } from '../../src/checks/planner/search.ts';
import { exactCost } from './exact.ts';
import { randomProblem } from './random-problem.ts';

describe('small problems', () => {
  test('the plan found is within 5 % of the exact optimum, and both bounds hold', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 0, max: 5 }),
        (seed, states, checks) => {
          const { problem, situation } = randomProblem(seed, states, checks);
          const exact = exactCost(problem, situation);
          const search = new PlanSearch(problem, situation);
          search.run({ expansions: 1 });
          expect(search.root.lower).toBeLessThanOrEqual(exact + 1e-6);
          search.run({ expansions: 400 });
          expect(search.root.lower).toBeLessThanOrEqual(exact + 1e-6);
          expect(search.root.upper).toBeGreaterThanOrEqual(exact - 1e-6);
          expect(search.root.upper).toBeLessThanOrEqual(1.05 * exact);
        },
      ),
      { numRuns: 80 },
    );
  });

  test.each([11])('eight causes, eight checks (seed %i)', (seed) => {
    const { problem, situation } = randomProblem(seed, 8, 8, 600, 2);
    const exact = exactCost(problem, situation);
    const search = new PlanSearch(problem, situation);
    search.run({ expansions: 500 });
    expect(search.root.lower).toBeLessThanOrEqual(exact + 1e-6);
    expect(search.root.upper).toBeGreaterThanOrEqual(exact - 1e-6);
    expect(search.root.upper).toBeLessThanOrEqual(1.05 * exact);
  });

  test('left alone it closes the gap', () => {
    const { problem, situation } = randomProblem(5, 4, 4);
    const search = new PlanSearch(problem, situation);
    search.run({ expansions: 20_000 });
    expect(search.gap).toBeLessThan(1e-6);
    expect(search.root.upper).toBeCloseTo(exactCost(problem, situation), 6);
  });

  test('sending away is chosen when all else is dearer', () => {
    const { problem, situation } = randomProblem(7, 4, 3, 5);
    const search = new PlanSearch(problem, situation);
    search.run({ expansions: 100 });
    expect(search.root.upper).toBeCloseTo(5, 9);
    expect(search.plan().action).toBe(-1);
  });
});

test('a call that asks to stop ends the search, which can be taken up again', () => {
  const { problem, situation } = randomProblem(3, 6, 6);
  const search = new PlanSearch(problem, situation);
  search.run({ expansions: 1000, shouldStop: () => true });
  const first = search.root.upper;
  expect(search.expansions).toBe(1);
  search.run({ expansions: 300 });
  expect(search.expansions).toBeGreaterThan(1);
  expect(search.root.upper).toBeLessThanOrEqual(first);
});
