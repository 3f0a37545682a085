/** The plan of a job: its answers improve, its figures agree with each other, and it obeys what the trade demands. */
import { describe, expect, test } from 'vitest';
import { jobProblem } from './job-problem.ts';
import { beliefOf, type JobState, NEW_JOB } from './job-state.ts';
import { plan, planNext } from './plan.ts';
import type { PlanTree } from './plan-tree.ts';

const LEAK: JobState = { ...NEW_JOB, codes: ['P0442'] };

/** Every path of a tree as the ids of its steps; one that is cut off because hardly anyone comes there ends in "rare". */
function paths(tree: PlanTree, before: readonly string[] = []): string[][] {
  const here = [...before, tree.step.id];
  if (tree.probability < 0.001 && tree.answers.length === 0) return [[...here, 'rare']];
  const below = tree.answers.flatMap(({ next }) => (next === 'proven' ? [[...here, 'proven']] : paths(next, here)));
  return below.length > 0 ? below : [here];
}

describe('a small leak', () => {
  const made = plan(LEAK, { expansions: 80 });
  const all = paths(made.tree);

  test('answers come one after the other and get no worse', () => {
    const costs: number[] = [];
    const answers = planNext(LEAK, { expansions: 80 });
    for (let a = answers.next(); ; a = answers.next()) {
      costs.push(a.value.expected.cost);
      if (a.done) break;
    }
    expect(costs.length).toBeGreaterThan(2);
    for (let i = 1; i < costs.length; i++) expect(costs[i]!).toBeLessThanOrEqual(costs[i - 1]! + 1e-9);
  });

  test('expected minutes and goods, summed over the printed tree, are the cost that the search states', () => {
    const { minutes, waitMinutes, goods, cost } = made.expected;
    expect(minutes + 0.1 * waitMinutes + goods / 1.5).toBeCloseTo(cost, 6);
  });

  test('the bound lies below the plan, and the gap is what lies between', () => {
    expect(made.leastCost).toBeLessThanOrEqual(made.expected.cost);
    expect(made.gap).toBeCloseTo((made.expected.cost - made.leastCost) / made.expected.cost, 9);
  });

  test('smoke only after both valves are proven to seal, level dependence only after the split', () => {
    for (const path of all) {
      const smoke = path.indexOf('T23');
      if (smoke >= 0) {
        expect(path.indexOf('T12')).toBeGreaterThanOrEqual(0);
        expect(path.indexOf('T12')).toBeLessThan(smoke);
        expect(path.indexOf('T16')).toBeLessThan(smoke);
      }
      const level = path.indexOf('T22');
      if (level >= 0) expect(path.slice(0, level)).toContain('T21');
    }
    expect(all.length).toBeGreaterThan(5);
  });

  test('every path ends in a proof or in sending away, as far as it is shown; no step is done twice', () => {
    for (const path of all) {
      expect(['proven', 'send away', 'rare']).toContain(path.at(-1));
      expect(new Set(path).size).toBe(path.length);
    }
  });

  test('answers of the next step sum to 1 and agree with the tree', () => {
    const total = made.answers.reduce((sum, { probability }) => sum + probability, 0);
    const isRepair = made.next.kind === 'repair';
    if (!isRepair) expect(total).toBeCloseTo(1, 6);
    expect(made.tree.step).toEqual(made.next);
  });

  test('says what the reflex would cost', () => {
    const likeliest = made.instead.find(({ step }) => step.kind === 'repair');
    expect(likeliest?.step.id).toBe('cap');
    expect(likeliest?.probability).toBeGreaterThan(0.1);
    expect(likeliest?.probability).toBeLessThan(0.3);
  });
});

test('the shop’s own minutes of a verification count in every repair that it proves', () => {
  const job: JobState = { ...LEAK, finding: { causes: [{ id: 'purge_leak', probability: 1, places: [] }] } };
  const minutes = (changes: JobState['changes']): number => {
    const { problem, prices, repairs } = jobProblem({ ...job, changes }, beliefOf({ ...job, changes }));
    return prices[problem.checks.length + repairs.findIndex(({ id }) => id === 'purge valve')]!.minutes;
  };
  expect(minutes({ 'check.T31.minutes': 40 })).toBe(minutes({}) + 25);
});

test.each(['P0442', 'P0446', 'P0496'])('%s: the reflex is searched as well as the plan', (code) => {
  // whoever fits a part first can go on as the plan would have: that is dearer by the part's own price at most
  const { instead } = plan({ ...NEW_JOB, codes: [code] }, { expansions: 150 });
  const repairs = instead.filter(({ step }) => step.kind === 'repair');
  expect(repairs).toHaveLength(1);
  for (const { step, extra } of repairs) expect(extra).toBeLessThanOrEqual(step.cost);
});

test('a call that asks to stop gets a plan all the same', () => {
  const made = plan(LEAK, { shouldStop: () => true });
  expect(made.expansions).toBe(1);
  expect(made.next.id.length).toBeGreaterThan(0);
});

test('checks that the shop cannot do are not in the plan', () => {
  const { tree } = plan({ ...LEAK, leftOut: ['T21', 'T23', 'T28'] }, { expansions: 30 });
  for (const path of paths(tree)) expect(path.some((id) => ['T21', 'T23', 'T28'].includes(id))).toBe(false);
});

test('one lift serves several checks: once done it is not paid again', () => {
  const { tree } = plan({ ...LEAK, setupsDone: ['lift', 'rig', 'tool'] }, { expansions: 30 });
  const walk = (t: PlanTree): void => {
    expect(t.step.setups.some((id) => ['lift', 'rig', 'tool'].includes(id))).toBe(false);
    for (const { next } of t.answers) if (next !== 'proven') walk(next);
  };
  walk(tree);
});

test('a settled cause is repaired next', () => {
  const job: JobState = {
    ...LEAK,
    finding: {
      causes: [
        { id: 'purge_leak', probability: 0.98, places: [] },
        { id: 'none', probability: 0.02, places: [] },
      ],
    },
    steps: [{ kind: 'check', id: 'T12', entry: { outcome: 'falls' } }],
  };
  expect(plan(job, { expansions: 40 }).next).toMatchObject({ kind: 'repair', id: 'purge valve' });
});

test('a dear unproven car is worth more steps than a cheap one', () => {
  const cheap = plan({ ...LEAK, changes: { 'shop.unproven': 20 } }, { expansions: 20 });
  expect(cheap.next.kind).toBe('send away');
  expect(cheap.unproven.probability).toBeCloseTo(1, 9);
  expect(plan({ ...LEAK, changes: { 'shop.unproven': 5000 } }, { expansions: 40 }).unproven.probability).toBeLessThan(
    0.05,
  );
});
