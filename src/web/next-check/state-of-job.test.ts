/** What of a job reaches the planner: results, circumstances, what cannot be done, and repairs that did not hold. */
import { describe, expect, test } from 'vitest';
import { causeProbabilities } from '../../checks/belief.ts';
import { beliefOf } from '../../checks/job-state.ts';
import type { RootCauseId } from '../../checks/root-causes.ts';
import { EMPTY_SECTIONS } from '../../jobs/record/empty-job.ts';
import type { CheckResult, Job, JobFinding } from '../../jobs/record/job.ts';
import { catalogueResults, FIRST_WISHES, type PlanWishes, stateOfJob, usableChanges } from './state-of-job.ts';

const at = (hour: number): string => `2026-03-02T${String(hour).padStart(2, '0')}:00:00.000Z`;
const JOB = {
  ...EMPTY_SECTIONS,
  complaint: { words: 'lamp', types: ['P0442'] },
  car: { layout: 'engine-vacuum' },
  findings: [],
  handOvers: [],
} as unknown as Job;

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
const numbers = (hour: number, checkId: string, values: Record<string, string>): CheckResult => ({
  ...check(hour, checkId, ''),
  answer: { numbers: values },
});
const repair = (hour: number, repairId?: string): Job['repairs'][number] => ({
  id: `repair ${hour}`,
  at: at(hour),
  by: 'a',
  what: 'done',
  parts: [],
  addresses: [],
  ...(repairId === undefined ? {} : { repairId }),
});
const proof = (verdict: 'held' | 'not-held' | 'not-proven', after: string[] = []): Job['proof'] => ({
  before: [],
  after,
  verdict,
  words: '',
  missing: '',
});
const found = (hour: number): JobFinding =>
  ({
    madeAt: at(hour),
    sheet: { finding: { causes: [{ id: 'leak', probability: 1, places: [], words: 'left out' }] } },
  }) as unknown as JobFinding;

const state = (change: Partial<Job>, wishes: Partial<PlanWishes> = {}, missing: readonly string[] = []) =>
  stateOfJob({ ...JOB, ...change }, { ...FIRST_WISHES, ...wishes }, {}, missing)!;
const p = (change: Partial<Job>, id: RootCauseId): number =>
  causeProbabilities(beliefOf(state(change))).find((cause) => cause.id === id)!.probability;

test('without a car there is nothing to plan', () => {
  expect(stateOfJob({ ...JOB, car: null }, FIRST_WISHES, {})).toBeNull();
});

test('complaint, codes and the newest finding’s causes, places and size go over, and nothing else of the finding', () => {
  const made = state({ codes: [{ code: 'P0442', status: 'stored' }], findings: [found(8), found(9)] });
  expect(made).toMatchObject({ layout: 'engine-vacuum', complaints: ['P0442'], codes: ['P0442'] });
  expect(made.finding).toEqual({ causes: [{ id: 'leak', probability: 1, places: [] }] });
  const diameterMm = { median: 0.6, lo90: 0.5, hi90: 0.7 };
  const sized = found(2);
  const sizedToo = { ...sized, sheet: { ...sized.sheet, finding: { ...sized.sheet.finding, diameterMm } } };
  expect(state({ findings: [sizedToo] }).finding?.diameterMm).toEqual(diameterMm);
});

describe('results', () => {
  test('the newest of each check counts; a check written by hand does not', () => {
    const { checkId: _, ...byHand } = check(7, 'T03', 'clean');
    const checks = [byHand, check(8, 'T12', 'holds'), check(9, 'T16', 'does not open'), check(10, 'T12', 'falls')];
    expect(catalogueResults({ checks }).map(({ checkId, at: when }) => [checkId, when])).toEqual([
      ['T16', at(9)],
      ['T12', at(10)],
    ]);
    expect(state({ checks }).steps).toEqual([
      { kind: 'check', id: 'T16', entry: { outcome: 'does not open' } },
      { kind: 'check', id: 'T12', entry: { outcome: 'falls' } },
    ]);
  });

  test('set-ups of checks done stay made; what stands ready by itself is added', () => {
    const { setupsDone } = state({ checks: [check(8, 'T16', 'seals and opens')] }, { standing: ['rig', 'lift'] });
    expect([...setupsDone].sort()).toEqual(['lift', 'rig', 'tool']);
  });

  test('what was seen before a repair does not speak of a car that was found after it', () => {
    const checks = [check(8, 'T12', 'holds'), check(11, 'T16', 'seals and opens')];
    const ids = (change: Partial<Job>) => state({ checks, repairs: [repair(10)], ...change }).steps.map(({ id }) => id);
    expect(ids({})).toEqual(['T12', 'T16']);
    expect(ids({ findings: [found(9)] })).toEqual(['T12', 'T16']);
    expect(ids({ findings: [found(12)] })).toEqual(['T16']);
  });

  test('a verification is the proof’s, not the belief’s', () => {
    expect(state({ checks: [check(8, 'T38', 'ran and passed')] }).steps).toEqual([]);
  });
});

describe('a repair that did not hold', () => {
  const cap = repair(10, 'cap');
  const stepsOf = (change: Partial<Job>) => state({ repairs: [cap], ...change }).steps;

  test('goes to the planner when its verification failed, and takes its cause out', () => {
    const checks = [check(11, 'T38', 'ran and failed')];
    expect(stepsOf({ checks })).toEqual([{ kind: 'repair', id: 'cap' }]);
    expect(p({}, 'F01')).toBeGreaterThan(0.1);
    expect(p({ repairs: [cap], checks }, 'F01')).toBe(0);
  });

  test('nothing is said of it before it is verified, nor when the verification was clean', () => {
    expect(stepsOf({})).toEqual([]);
    expect(stepsOf({ checks: [check(9, 'T38', 'ran and failed')] })).toEqual([]);
    expect(stepsOf({ checks: [check(11, 'T38', 'ran and passed')] })).toEqual([]);
  });

  test('numbers verify as well: the flow of a 1 mm hole against a tight system', () => {
    const flow = (value: string) => [numbers(11, 'T37', { flow: value, pressure: '10 inH2O' })];
    expect(stepsOf({ checks: flow('2.2 L/min') })).toEqual([{ kind: 'repair', id: 'cap' }]);
    expect(stepsOf({ checks: flow('0 L/min') })).toEqual([]);
  });

  test('a later repair has its own verification; the last word between the two counts', () => {
    const repairs = [cap, repair(13, 'purge valve')];
    const failedThenHeld = [
      check(11, 'T38', 'ran and passed'),
      check(12, 'T38', 'ran and failed'),
      check(14, 'T31', 'passes'),
    ];
    expect(state({ repairs, checks: failedThenHeld }).steps.filter(({ kind }) => kind === 'repair')).toEqual([
      { kind: 'repair', id: 'cap' },
    ]);
  });

  test('a proof that was not held speaks of every repair made before it was measured', () => {
    const recording = { id: 'after', receivedAt: at(12) } as Job['recordings'][number];
    const repairs = [cap, repair(11, 'purge valve'), repair(13, 'canister'), repair(9)];
    const steps = state({ repairs, recordings: [recording], proof: proof('not-held', ['after']) }).steps;
    expect(steps).toEqual([
      { kind: 'repair', id: 'cap' },
      { kind: 'repair', id: 'purge valve' },
    ]);
    expect(state({ repairs, proof: proof('held') }).steps).toEqual([]);
    expect(state({ repairs, proof: proof('not-proven') }).steps).toEqual([]);
  });

  test('one that the catalogue does not know tells nothing', () => {
    expect(state({ repairs: [repair(10, 'windscreen')], proof: proof('not-held') }).steps).toEqual([]);
  });
});

describe('circumstances', () => {
  test('what is known of the car shifts the priors; a name that nobody knows any more is passed over', () => {
    const complaint = { ...JOB.complaint, circumstances: ['tank or pump work in the last 90 days', 'full moon'] };
    expect(state({ complaint }).circumstances).toEqual(['tank or pump work in the last 90 days']);
    expect(p({ complaint }, 'F10')).toBeGreaterThan(2 * p({}, 'F10'));
  });

  test('what is not at hand is left out beside what is not wanted', () => {
    const smoke = 'smoke machine with inert gas';
    expect(state({}, { leftOut: ['T03'] }, [smoke]).leftOut).toEqual(['T03', 'T23']);
    expect(state({}, { hasNoLift: true }).leftOut).toEqual(expect.arrayContaining(['T21', 'R04']));
    expect(state({}, { fuelLevel: 'full' }).leftOut).toEqual(expect.arrayContaining(['T17', 'T31']));
    expect(state({}).leftOut).toEqual([]);
  });
});

test('figures that no longer exist or lie outside their range do not stop the plan', () => {
  expect(usableChanges({ 'shop.rate': 120, 'shop.waiting': 7, 'no.such': 1 })).toEqual({ 'shop.rate': 120 });
});
