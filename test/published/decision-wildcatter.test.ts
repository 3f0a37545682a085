/**
 * The oil wildcatter of Raiffa, Decision Analysis, 1968 (figures from memory, arithmetic checked): states dry 0.5, wet 0.3,
 * soaking 0.2 with results of drilling -70, 50, 200; sounding costs 10 and shows no, open or closed structure with
 * 0.6/0.3/0.1, 0.3/0.4/0.3, 0.1/0.4/0.5. Worth 20 without sounding and 22.5 with it.
 *
 * The four-part, three-test computer repair of Jensen and Bard's Operations Research Models and Methods is not here: its
 * tables were not at hand.
 */
import { describe, expect, test } from 'vitest';
import { startOf } from '../../src/checks/planner/problem.ts';
import { PlanSearch } from '../../src/checks/planner/search.ts';
import { type DecisionTree, rollBack } from '../planner/decision-tree.ts';

const PRIOR = [0.5, 0.3, 0.2];
const RESULT = [-70, 50, 200];
const SHOWS = [
  [0.6, 0.3, 0.1],
  [0.3, 0.4, 0.3],
  [0.1, 0.4, 0.5],
];

const drillOrNot = (p: readonly number[]): DecisionTree => ({
  kind: 'decision',
  options: [
    {
      name: 'drill',
      cost: 0,
      next: { kind: 'chance', branches: p.map((x, s) => ({ p: x, next: { kind: 'end', cost: -RESULT[s]! } })) },
    },
    { name: 'leave', cost: 0, next: { kind: 'end', cost: 0 } },
  ],
});

const afterShown = (o: number) => {
  const joint = PRIOR.map((p, s) => p * SHOWS[s]![o]!);
  const total = joint.reduce((a, b) => a + b, 0);
  return { p: total, posterior: joint.map((x) => x / total) };
};

describe('the oil wildcatter (figures from memory)', () => {
  test('rolled back as a tree: 20 without sounding, 22.5 with it', () => {
    expect(rollBack(drillOrNot(PRIOR)).cost).toBeCloseTo(-20, 9);
    const sounding: DecisionTree = {
      kind: 'chance',
      branches: [0, 1, 2].map((o) => {
        const { p, posterior } = afterShown(o);
        return { p, next: drillOrNot(posterior) };
      }),
    };
    const whole = rollBack({
      kind: 'decision',
      options: [
        { name: 'sound first', cost: 10, next: sounding },
        { name: 'decide now', cost: 0, next: drillOrNot(PRIOR) },
      ],
    });
    expect(whole.choice).toBe('sound first');
    expect(whole.cost).toBeCloseTo(-22.5, 9);
  });

  test('found by the planner’s own search', () => {
    const problem = {
      states: 3,
      checks: [
        {
          id: 'sounding',
          cost: 10,
          setups: 0,
          after: [],
          likelihood: [0, 1, 2].map((o) => Float64Array.from(SHOWS, (row) => row[o]!)),
        },
      ],
      repairs: [],
      ends: [
        { id: 'drill', cost: Float64Array.from(RESULT, (x) => -x) },
        { id: 'leave', cost: new Float64Array(3) },
      ],
      setupCosts: [],
    };
    const search = new PlanSearch(problem, startOf(problem, Float64Array.from(PRIOR)));
    search.run({ expansions: 50 });
    expect(search.plan().action).toBe(0);
    expect(search.root.upper).toBeCloseTo(-22.5, 9);
    expect(search.root.lower).toBeCloseTo(-22.5, 9);
    const without = { ...problem, checks: [] };
    const decided = new PlanSearch(without, startOf(without, Float64Array.from(PRIOR)));
    decided.run({ expansions: 5 });
    expect(decided.root.upper).toBeCloseTo(-20, 9);
  });
});
