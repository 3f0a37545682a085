/** The flow chart names only what exists, and always ends with a sound car. */
import { expect, test } from 'vitest';
import { checkById } from '../../src/checks/catalogue/all.ts';
import { REPAIR_IDS, REPAIRS } from '../../src/checks/repairs.ts';
import { ROOT_CAUSES } from '../../src/checks/root-causes.ts';
import { type ChartStep, FLOW_CHART } from './flow-chart.ts';

function walk({ check, on }: ChartStep): void {
  const outcomes = checkById(check).outcomes.map(({ id }) => id);
  for (const [outcome, next] of Object.entries(on)) {
    expect(outcomes).toContain(outcome);
    for (const step of next) {
      if (typeof step === 'string') expect(REPAIR_IDS).toContain(step);
      else walk(step);
    }
  }
}

test.each(Object.entries(FLOW_CHART))('%s', (_, chart) => {
  chart.steps.forEach(walk);
  const repaired = new Set(REPAIRS.filter(({ id }) => chart.parts.includes(id)).flatMap(({ fixes }) => fixes));
  // an engine-vacuum car has neither pump module nor isolation valve nor ejector
  const possible = ROOT_CAUSES.filter(({ layouts }) => layouts === undefined).map(({ id }) => id);
  expect(possible.filter((id) => !repaired.has(id))).toEqual([]);
});
