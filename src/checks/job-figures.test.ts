/** What is known of the hole's size counts for checks that see small ones less often. */
import { expect, test } from 'vitest';
import { checkKey } from './figures.ts';
import { jobFigures } from './job-figures.ts';
import { jobStateFromStored, jobStateSchema, storedJobState } from './job-format.ts';
import { type JobState, NEW_JOB } from './job-state.ts';
import { plan } from './plan.ts';

const heard = (median: number | undefined): number =>
  jobFigures(
    {},
    median === undefined ? undefined : { median, lo90: 0.9 * median, hi90: 1.1 * median },
  )(checkKey('T27', 'sensitivity'));

test('a hole of 0.6 mm is hardly heard, one of 1.5 mm as usual, one of no known size as the catalogue says', () => {
  expect(heard(undefined)).toBe(0.6);
  expect(heard(1.5)).toBeCloseTo(0.6, 3);
  expect(heard(0.6)).toBeCloseTo(0.15, 3);
  expect(heard(1)).toBeCloseTo((0.6 + 0.15) / 2, 3);
});

test('other figures, and the shop’s own, are left alone', () => {
  const figure = jobFigures({ 'check.T27.sensitivity': 0.1 }, { median: 0.6, lo90: 0.5, hi90: 0.7 });
  expect(figure('check.T27.sensitivity')).toBe(0.1);
  expect(figure('check.T12.sensitivity')).toBe(0.935);
});

test('nobody is sent to listen for a hole of 0.6 mm; the size is kept with the job', () => {
  const job: JobState = {
    ...NEW_JOB,
    codes: ['P0442'],
    finding: {
      causes: [{ id: 'leak', probability: 1, places: [{ group: ['canister', 'tank top'], probability: 1 }] }],
      diameterMm: { median: 0.6, lo90: 0.55, hi90: 0.66 },
    },
  };
  expect(plan(job, { expansions: 100 }).next.id).not.toBe('T27');
  expect(jobStateFromStored(jobStateSchema.parse(storedJobState(job)))).toEqual(job);
});
