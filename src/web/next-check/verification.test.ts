/** What the sheet asks for after a repair. */
import { expect, test } from 'vitest';
import { EMPTY_SECTIONS } from '../../jobs/record/empty-job.ts';
import type { CheckResult, Job } from '../../jobs/record/job.ts';
import { verificationFor } from './verification.ts';

const at = (hour: number): string => `2026-03-02T${String(hour).padStart(2, '0')}:00:00.000Z`;
const job = (change: Partial<Job>): Job => ({ ...EMPTY_SECTIONS, findings: [], handOvers: [], ...change }) as Job;
const repair = (hour: number, more: Partial<Job['repairs'][number]> = {}): Job['repairs'][number] => ({
  id: `repair ${hour}`,
  at: at(hour),
  by: 'a',
  what: 'new part',
  parts: [],
  addresses: [],
  ...more,
});
const check = (hour: number, checkId: string, outcome: string): CheckResult => ({
  id: `check ${hour}`,
  at: at(hour),
  by: 'a',
  what: checkId,
  result: outcome,
  speaksFor: [],
  speaksAgainst: [],
  strength: 'clear',
  checkId,
  answer: { outcome },
});
const asked = (change: Partial<Job>, layout: Parameters<typeof verificationFor>[1] = 'engine-vacuum') =>
  verificationFor(job(change), layout);

test('nothing was repaired: the plan goes on', () => {
  expect(asked({})).toBeUndefined();
});

test('a repair waits for the check that proves it', () => {
  expect(asked({ repairs: [repair(1, { repairId: 'cap' })] })).toEqual({
    kind: 'open',
    checkId: 'T37',
    what: 'new part',
  });
  expect(asked({ repairs: [repair(1, { repairId: 'purge valve' })] })).toMatchObject({ checkId: 'T31' });
  // a car whose own test cannot be commanded so is driven until it has run
  expect(asked({ repairs: [repair(1, { repairId: 'purge valve' })] }, 'sealed-tank')).toMatchObject({ checkId: 'T38' });
});

test('one of no catalogue is judged by what it was to remove', () => {
  expect(asked({ repairs: [repair(1)] })).toMatchObject({ checkId: 'T37' });
  expect(asked({ repairs: [repair(1, { addresses: ['leak'] })] })).toMatchObject({ checkId: 'T37' });
  const blocked = repair(1, { addresses: ['vent_restricted'] });
  expect(asked({ repairs: [blocked] })).toMatchObject({ checkId: 'T31' });
  expect(asked({ repairs: [blocked], checks: [check(2, 'T31', 'passes')] })).toEqual({ kind: 'held' });
});

test('verified it is at its end; not held the plan goes on; what was done before it does not count', () => {
  const repairs = [repair(2, { repairId: 'cap' })];
  expect(asked({ repairs, checks: [check(3, 'T37', 'tight')] })).toEqual({ kind: 'held' });
  expect(asked({ repairs, checks: [check(3, 'T37', 'flows')] })).toBeUndefined();
  expect(asked({ repairs, checks: [check(1, 'T37', 'tight')] })).toMatchObject({ kind: 'open' });
  // the second repair has not been verified by what spoke for the first
  const second = [...repairs, repair(4, { repairId: 'purge line' })];
  expect(asked({ repairs: second, checks: [check(3, 'T37', 'tight')] })).toMatchObject({ kind: 'open' });
});
