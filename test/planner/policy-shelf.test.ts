/** Plans at hand, sorted out by bits, against the definition: one by one. */
import { describe, expect, test } from 'vitest';
import type { Policy } from '../../src/checks/planner/policy.ts';
import { Shelf } from '../../src/checks/planner/policy-shelf.ts';
import type { Situation } from '../../src/checks/planner/problem.ts';
import { randomStream } from '../../src/simulation/random.ts';
import { randomProblem } from './random-problem.ts';

const { problem } = randomProblem(12, 22, 29);
const ACTIONS = problem.checks.length + problem.repairs.length;
const random = randomStream(3, 1);
const chance = (p: number): boolean => random.uniform() < p;
const some = (p: number): number[] => Array.from({ length: ACTIONS }, (_, a) => a).filter(() => chance(p));
const bits = (actions: readonly number[]): number[] => {
  const words = new Array<number>(Math.ceil(ACTIONS / 32)).fill(0);
  for (const a of actions) words[a >>> 5]! |= 1 << (a & 31);
  return words;
};

const plans = Array.from({ length: 100 }, () => {
  const uses = some(0.15);
  const needs = some(0.02).filter((a) => !uses.includes(a));
  const setups = Number(chance(0.5)) + 2 * Number(chance(0.5));
  const paid = setups & (Number(chance(0.5)) + 2 * Number(chance(0.5)));
  const cost = Float64Array.from({ length: problem.states }, () => 100 * random.uniform());
  const policy: Policy = {
    action: uses[0] ?? -1,
    next: [],
    cost,
    uses: bits(uses),
    needs: bits(needs),
    setups,
    paid,
  };
  return { policy, uses, needs };
});

function place(): Situation {
  const raw = Float64Array.from({ length: problem.states }, () => random.uniform() ** 4);
  const total = raw.reduce((a, b) => a + b, 0);
  const done = Uint8Array.from({ length: ACTIONS }, () => Number(chance(0.3)));
  return { belief: raw.map((x) => x / total), done, setups: Math.floor(4 * random.uniform()) };
}

describe('the cheapest plan that fits', () => {
  const shelf = new Shelf(
    plans.map(({ policy }) => policy),
    problem,
  );
  const places = Array.from({ length: 200 }, place);
  const fitting = ({ belief, done, setups }: Situation) =>
    plans
      .filter(({ uses, needs }) => uses.every((a) => done[a] === 0) && needs.every((a) => done[a] !== 0))
      .filter(({ policy }) => (setups & policy.setups) === policy.paid)
      .map(({ policy }) => ({ policy, cost: belief.reduce((sum, b, s) => sum + b * policy.cost[s]!, 0) }))
      .sort((a, b) => a.cost - b.cost);

  test('is found wherever one fits, and no other', () => {
    const expected = places.map((at) => fitting(at)[0]?.policy);
    expect(places.map((at) => shelf.cheapest(at, Number.POSITIVE_INFINITY)?.policy)).toEqual(expected);
    // both kinds of place are tried
    expect(expected.filter((policy) => policy === undefined).length).toBeGreaterThan(10);
    expect(expected.filter((policy) => policy !== undefined).length).toBeGreaterThan(10);
  });

  test('is not named when it costs no less than asked for', () => {
    for (const at of places) {
      const best = fitting(at)[0];
      if (best) expect(shelf.cheapest(at, best.cost * (1 - 1e-9))).toBeUndefined();
    }
  });
});
