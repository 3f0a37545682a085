/** From finding and results to belief. */
import { describe, expect, test } from 'vitest';
import { causeProbabilities, setupFaultProbabilities } from './belief.ts';
import { findingFactors } from './finding-factors.ts';
import { jobStateFromStored, jobStateSchema, storedJobState } from './job-format.ts';
import { beliefOf, type JobState, NEW_JOB, type Step } from './job-state.ts';
import type { RootCauseId } from './root-causes.ts';

const p = (job: JobState, id: RootCauseId): number =>
  causeProbabilities(beliefOf(job)).find((cause) => cause.id === id)!.probability;
const seen = (id: string, outcome: string): Step => ({ kind: 'check', id, entry: { outcome } });
const LEAK: JobState = { ...NEW_JOB, codes: ['P0442'] };

test('probabilities sum to 1 and follow the priors table', () => {
  expect(causeProbabilities(beliefOf(LEAK)).reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12);
  // the table's column for P0442: cap 18, vent valve 17, purge valve 14, sender seal 9
  expect(p(LEAK, 'F01') / p(LEAK, 'F05')).toBeCloseTo(18 / 17, 6);
  expect(p(LEAK, 'F03') / p(LEAK, 'F10')).toBeCloseTo(14 / 9, 6);
  expect(p(LEAK, 'F17')).toBe(0);
});

test('circumstances shift the priors', () => {
  const worked: JobState = { ...LEAK, circumstances: ['tank or pump work in the last 90 days'] };
  expect(p(worked, 'F10') / p(worked, 'F01')).toBeCloseTo((6 * p(LEAK, 'F10')) / p(LEAK, 'F01'), 6);
});

test('a finding becomes root causes at its places', () => {
  const found: JobState = {
    ...LEAK,
    finding: {
      causes: [
        { id: 'leak', probability: 0.9, places: [{ group: ['canister'], probability: 0.9 }] },
        { id: 'none', probability: 0.1, places: [] },
      ],
    },
  };
  expect(p(found, 'F07')).toBeGreaterThan(0.75);
  expect(p(found, 'F01')).toBeLessThan(0.05);
  // without a place the prior shares it out
  const unplaced: JobState = { ...LEAK, finding: { causes: [{ id: 'leak', probability: 1, places: [] }] } };
  expect(p(unplaced, 'F01')).toBeGreaterThan(p(unplaced, 'F11'));
  expect(p(unplaced, 'F14')).toBeLessThan(0.01);
});

describe('results', () => {
  test('a purge valve that loses vacuum is believed by Bayes’ rule', () => {
    const before = p(LEAK, 'F03');
    const after: JobState = { ...LEAK, steps: [seen('T12', 'falls')] };
    // sensitivity 0.935, specificity 0.945; a leaking clamp (6 %) shows the same with 0.95
    const hit = 0.94 * 0.935 + 0.06 * 0.95;
    const alarm = 0.94 * 0.055 + 0.06 * 0.95;
    expect(p(after, 'F03')).toBeCloseTo((before * hit) / (before * hit + (1 - before) * alarm), 6);
  });

  test('a failed set-up is a cause: it is believed more after results that contradict', () => {
    const clamp = (job: JobState) =>
      setupFaultProbabilities(beliefOf(job)).find(({ id }) => id === 'clamp leaks')!.probability;
    const one: JobState = { ...LEAK, steps: [seen('T12', 'falls')] };
    const both: JobState = { ...LEAK, steps: [seen('T12', 'falls'), seen('T16', 'does not seal')] };
    expect(clamp(one)).toBeGreaterThan(clamp(LEAK));
    expect(clamp(both)).toBeGreaterThan(clamp(one));
  });

  test('a repair that did not hold takes its causes out', () => {
    const after: JobState = { ...LEAK, steps: [{ kind: 'repair', id: 'cap' }] };
    expect(p(after, 'F01')).toBe(0);
    expect(p(after, 'F05')).toBeCloseTo(p(LEAK, 'F05') / (1 - p(LEAK, 'F01')), 9);
  });

  test('numbers count by what they say', () => {
    const flow = (text: string): JobState => ({
      ...NEW_JOB,
      complaints: ['not ready'],
      steps: [{ kind: 'check', id: 'T20', entry: { numbers: { flow: text, pressure: '10 inH2O' } } }],
    });
    expect(p(flow('0.8 L/min'), 'F05')).toBeGreaterThan(p(flow('0.1 L/min'), 'F05'));
    expect(p(flow('0.1 L/min'), 'F05')).toBeGreaterThan(p(flow('0 L/min'), 'F05'));
  });

  test('a result that cannot be read is named with its step', () => {
    const bad: JobState = { ...LEAK, steps: [seen('T12', 'holds'), seen('T16', 'explodes')] };
    expect(() => beliefOf(bad)).toThrow('step 2, T16');
  });
});

test('what the results say goes back to the finding’s causes', () => {
  const job: JobState = { ...LEAK, steps: [seen('T12', 'falls')] };
  const factor = (cause: string) => findingFactors(job).find((f) => f.cause === cause)!.logLikelihood;
  expect(factor('purge_leak')).toBeGreaterThan(1);
  expect(factor('vent_leak')).toBeLessThan(0);
});

test('the state survives a file', () => {
  const job: JobState = { ...LEAK, steps: [seen('T12', 'holds'), { kind: 'repair', id: 'cap' }], leftOut: ['T23'] };
  expect(jobStateFromStored(jobStateSchema.parse(JSON.parse(JSON.stringify(storedJobState(job)))))).toEqual(job);
});
