/** Which of a job's findings, checks and repairs a proof is made from. */
import { describe, expect, test } from 'vitest';
import type { Interval } from '../../diagnosis/finding.ts';
import { EMPTY_SECTIONS } from './empty-job.ts';
import type { CheckResult, Job, JobFinding } from './job.ts';
import { newestFinding, proofOfJob } from './proof-of-job.ts';

const REPAIRED_AT = '2026-05-04T12:00:00.000Z';
const BEFORE = '2026-05-04T10:00:00.000Z';
const AFTER = '2026-05-04T14:00:00.000Z';
const SIZE: Interval = { median: 0.9, lo90: 0.8, hi90: 1 };
const TIGHT: Interval = { median: 0.08, lo90: 0.04, hi90: 0.14 };

const recording = (sha256: string, taken: 'before-repair' | 'after-repair'): Job['recordings'][number] =>
  ({ id: `id-${sha256}`, sha256, taken, useInFinding: true }) as unknown as Job['recordings'][number];

/** Only what a proof reads of a finding. */
const finding = (
  shas: readonly string[],
  diameterMm: Interval | null,
  { conditions = {}, procedure = 'vacuum-draw' }: { conditions?: object; procedure?: string } = {},
): JobFinding =>
  ({
    id: `finding-${shas.join('-')}`,
    sheet: {
      car: { fuel: { reidVapourPressurePa: { low: 50_000, high: 60_000 } } },
      recordings: shas.map((sha256) => ({ sha256, procedure, conditions })),
      finding: {
        diameterMm,
        exceeds: { mm0_5: null, mm1_0: null },
        causes: [{ id: 'leak', probability: 1, places: [{ group: ['cap and neck'], probability: 1 }] }],
      },
    },
  }) as unknown as JobFinding;

const check = (checkId: string, at: string, answer: CheckResult['answer']): CheckResult =>
  ({ checkId, at, answer, speaksFor: [], speaksAgainst: [], strength: 'clear' }) as unknown as CheckResult;
const flow = (checkId: string, at: string, litres: string): CheckResult =>
  check(checkId, at, { numbers: { flow: `${litres} L/min`, pressure: '12 inH2O' } });
const split = (at: string, purge: string, canister: string, tank: string): CheckResult =>
  check('T21', at, {
    numbers: { 'purge side': `${purge} mm`, 'canister and vent': `${canister} mm`, 'tank and neck': `${tank} mm` },
  });

const REPAIR = { at: REPAIRED_AT, addresses: ['leak'] } as unknown as Job['repairs'][number];
const JOB = {
  ...EMPTY_SECTIONS,
  car: { schema: 'vaporwright-car-1', label: 'invented', layout: 'engine-vacuum' },
  recordings: [recording('a', 'before-repair'), recording('b', 'after-repair')],
  repairs: [REPAIR],
  findings: [finding(['a'], SIZE), finding(['b'], TIGHT)],
} as unknown as Job;
const proof = (change: Partial<Job>, limitMm = 0.5) => proofOfJob({ ...JOB, ...change }, limitMm).proof;
const codes = (change: Partial<Job>) => proof(change).missing.map(({ code }) => code);

describe('findings', () => {
  test('one from each side gives the sizes', () => {
    expect(proof({})).toMatchObject({ beforeMm: SIZE, afterMm: TIGHT, verdict: 'held' });
  });

  test('the newest of a side counts, and one over both sides is of neither', () => {
    const mixed = finding(['a', 'b'], { median: 5, lo90: 4, hi90: 6 });
    const newer = finding(['a'], { ...SIZE, median: 0.85 });
    const job = { ...JOB, findings: [...JOB.findings, newer, mixed] };
    expect(newestFinding(job, 'before-repair')).toBe(newer);
    expect(proofOfJob(job, 0.5).proof.beforeMm?.median).toBe(0.85);
  });

  test('a recording marked as made after the repair changes sides with its finding', () => {
    const moved = { recordings: [recording('a', 'after-repair'), recording('b', 'after-repair')] };
    expect(codes(moved)).toContain('no measurement before');
  });

  test('a finding that sizes nothing is no measurement', () => {
    expect(codes({ findings: [finding(['a'], SIZE), finding(['b'], null)] })).toContain('no measurement after');
  });

  test('the limit asked for is the one judged against', () => {
    expect(proof({ findings: [finding(['a'], SIZE), finding(['b'], SIZE)] }, 2).limitMet).toBeGreaterThan(0.99);
    expect(proof({ findings: [finding(['a'], SIZE), finding(['b'], SIZE)] }, 0.5).limitMet).toBeLessThan(0.01);
  });
});

test('the finding’s own probability for the limit is the proof’s, so that the sheet says one number', () => {
  const own = finding(['b'], TIGHT);
  const sized = { ...own.sheet.finding, exceeds: { mm0_5: 0.04, mm1_0: 0.001 } };
  const after = { ...own, sheet: { ...own.sheet, finding: sized } } as unknown as JobFinding;
  expect(proof({ findings: [JOB.findings[0]!, after] }).limitMet).toBeCloseTo(0.96, 12);
  expect(proof({ findings: [JOB.findings[0]!, after] }, 0.3).limitMet).toBeGreaterThan(0.99);
});

describe('a repair of something else than a hole', () => {
  const of = (shas: readonly string[], cause: string, probability: number): JobFinding => {
    const found = finding(shas, null, { procedure: 'refuelling' });
    const causes = [{ id: cause, probability, places: [] }];
    return {
      ...found,
      sheet: { ...found.sheet, finding: { ...found.sheet.finding, causes } },
    } as unknown as JobFinding;
  };
  const repairs = [{ ...REPAIR, addresses: ['vent_restricted'] } as unknown as Job['repairs'][number]];

  test('is judged by what the findings say of that fault', () => {
    const made = proof({ repairs, findings: [of(['a'], 'vent_restricted', 0.98), of(['b'], 'none', 0.95)] });
    expect(made).toMatchObject({ verdict: 'held', otherFault: { before: 0.98, after: 0 } });
    expect(made.budget).toBeNull();
  });

  test('is not proven without a finding after it', () => {
    expect(codes({ repairs, findings: [of(['a'], 'vent_restricted', 0.98)] })).toContain('no measurement after');
  });

  test('a valve that seeps to the engine is no hole to a finding, and one to a flow measured by hand', () => {
    const seep = [{ ...REPAIR, addresses: ['purge_leak'] } as unknown as Job['repairs'][number]];
    expect(proof({ repairs: seep }).otherFault).toBeDefined();
    const checks = [flow('T20', BEFORE, '1.4'), flow('T37', AFTER, '0.01')];
    expect(proof({ repairs: seep, findings: [], checks })).toMatchObject({ verdict: 'held' });
  });
});

describe('conditions', () => {
  const of = (before: object, after: object) =>
    proof({
      findings: [finding(['a'], SIZE, { conditions: before }), finding(['b'], TIGHT, { conditions: after })],
    }).conditions;

  test('come from the recordings, the volatility from the car as each finding had it', () => {
    const compared = of({ fuelLevel: 0.5, ambientTemperatureK: 290 }, { fuelLevel: 0.7, ambientTemperatureK: 310 });
    expect(compared).toContainEqual({ what: 'fuel level', before: 0.5, after: 0.7, alike: 'no' });
    expect(compared).toContainEqual({ what: 'ambient temperature', before: 290, after: 310, alike: 'no' });
    expect(compared).toContainEqual({ what: 'fuel temperature', alike: 'unknown' });
    const range = { low: 50_000, high: 60_000 };
    expect(compared).toContainEqual({
      what: 'volatility',
      before: range,
      after: range,
      alike: 'yes',
      isSameFill: false,
    });
  });

  test('of several recordings those of the same procedure are compared', () => {
    const two = finding(['a'], SIZE, { procedure: 'vacuum-draw' });
    const both = {
      ...two,
      sheet: {
        ...two.sheet,
        recordings: [
          { sha256: 'a', procedure: 'engine-off', conditions: { fuelLevel: 0.9 } },
          { sha256: 'a', procedure: 'vacuum-draw', conditions: { fuelLevel: 0.4 } },
        ],
      },
    } as unknown as JobFinding;
    const [method, , , level] = proof({ findings: [both, finding(['b'], TIGHT)] }).conditions;
    expect(method).toMatchObject({ before: 'vacuum-draw', after: 'vacuum-draw' });
    expect(level).toMatchObject({ before: 0.4 });
  });

  test('come from what was entered beside a size measured by hand', () => {
    const by = (checkId: string, at: string, litres: string, numbers: Readonly<Record<string, string>>) => {
      const made = flow(checkId, at, litres);
      return { ...made, answer: { numbers: { ...(made.answer as { numbers: object }).numbers, ...numbers } } };
    };
    const compared = proof({
      findings: [],
      checks: [
        by('T20', BEFORE, '1.4', { 'fuel temperature': '20 °C', 'fuel level': '40 %' }),
        by('T37', AFTER, '0.01', { 'fuel temperature': '31 °C', 'fuel level': '41 %' }),
      ] as unknown as Job['checks'],
    }).conditions;
    expect(compared).toContainEqual({ what: 'fuel temperature', before: 293.15, after: 304.15, alike: 'no' });
    expect(compared).toContainEqual({
      what: 'fuel level',
      before: expect.closeTo(0.4),
      after: expect.closeTo(0.41),
      alike: 'yes',
    });
    expect(compared).toContainEqual({ what: 'ambient temperature', alike: 'unknown' });
    expect(compared).toContainEqual(expect.objectContaining({ what: 'volatility', alike: 'yes', isSameFill: true }));
  });
});

describe('measured by hand', () => {
  // 0.5 mm at 12 inH2O flows 0.506 L/min: 0.61 · π/4 · (0.5 mm)² · √(2 · 2989 Pa / 1.204 kg/m³)
  const byHand = {
    findings: [],
    recordings: [],
    checks: [flow('T20', BEFORE, '1.4'), flow('T37', AFTER, '0.01')],
  };

  test('the flow before and the same flow after the repair are one kind of test', () => {
    const { conditions, beforeMm, verdict, missing } = proof(byHand);
    expect(conditions[0]).toEqual({ what: 'method', before: 'T20', after: 'T20', alike: 'yes' });
    expect(beforeMm?.lo90).toBeLessThan(0.5 * Math.sqrt(1.4 / 0.506));
    expect(beforeMm?.hi90).toBeGreaterThan(0.5 * Math.sqrt(1.4 / 0.506));
    expect(verdict).toBe('held');
    expect(missing.map(({ code }) => code)).toContain('conditions not known');
  });

  test('without a finding complaint, codes and checks say what the proof does not cover', () => {
    const flowCode = { codes: [{ code: 'P0446', status: 'stored' }] } as unknown as Partial<Job>;
    const blocked = proof({ ...byHand, ...flowCode });
    expect(blocked.notCovered.map(({ id }) => id)).toContain('F06v');
    expect(blocked.verdict).toBe('not-proven');
    // a vent path that was shown to be free before the repair need not be spoken of
    const opens = check('T16', BEFORE, { outcome: 'does not seal' });
    const free = check('T18', BEFORE, { outcome: 'free' });
    expect(proof({ ...byHand, ...flowCode, checks: [...byHand.checks, opens, free] }).notCovered).toEqual([]);
  });

  test('findings on both sides come first', () => {
    expect(proof({ checks: byHand.checks }).conditions[0]).toMatchObject({ before: 'vacuum-draw' });
  });

  test('another kind of test on each side is said to differ', () => {
    const { verdict, missing } = proof({ findings: [JOB.findings[0]!], checks: [flow('T37', AFTER, '0.01')] });
    const method = { what: 'method', before: 'vacuum-draw', after: 'T20', alike: 'no' };
    expect(missing).toContainEqual({ code: 'conditions differ', which: [method] });
    expect(verdict).toBe('not-proven');
  });

  test('what was measured between two repairs belongs to neither side', () => {
    const repairs = [REPAIR, { ...REPAIR, at: '2026-05-04T16:00:00.000Z' }];
    expect(codes({ ...byHand, repairs })).toContain('no measurement after');
  });

  test('an answer that can no longer be read counts as none', () => {
    expect(codes({ ...byHand, checks: [flow('T20', BEFORE, 'much'), byHand.checks[1]!] })).toContain(
      'no measurement before',
    );
  });
});

describe('sections', () => {
  const SPLIT_BEFORE = split(BEFORE, '0.05', '0.1', '0.9');
  const SPLIT_AFTER = split(AFTER, '0.05', '0.1', '0.1');

  test('the same sections before and after stand in the budget', () => {
    const { budget } = proof({ checks: [SPLIT_BEFORE, SPLIT_AFTER] });
    expect(budget?.sections.map(({ name }) => name)).toEqual(['purge side', 'canister and vent', 'tank and neck']);
    expect(budget?.sections[2]?.beforeMm?.median).toBeCloseTo(0.9, 1);
    expect(budget?.sections[2]?.afterMm?.median).toBeLessThan(0.2);
  });

  test('the one section that leaks gives the repaired leak its size, and the budget its expected rest', () => {
    const { budget } = proof({ checks: [SPLIT_BEFORE] });
    expect(budget?.repairedMm?.median).toBeCloseTo(0.9, 1);
    expect(budget?.expectedRestMm?.median).toBeLessThan(0.45);
    expect(budget?.rest).toBe('as expected');
  });

  test('two sections that leak: none of them is taken for the repaired one', () => {
    expect(proof({ checks: [split(BEFORE, '0.6', '0.05', '0.7')] }).budget?.repairedMm).toBeUndefined();
  });

  test('a cause that lies in one section alone needs no guess', () => {
    const repairs = [{ ...REPAIR, addresses: ['purge_leak'] } as unknown as Job['repairs'][number]];
    const { budget } = proof({ repairs, checks: [split(BEFORE, '0.6', '0.05', '0.7')] });
    expect(budget?.repairedMm?.median).toBeCloseTo(0.6, 1);
  });

  test('sections alone size the whole by their sum', () => {
    const { beforeMm, conditions } = proof({
      findings: [],
      checks: [split(BEFORE, '0.6', '0.05', '0.8'), SPLIT_AFTER],
    });
    expect(beforeMm?.median).toBeCloseTo(1, 1);
    expect(conditions[0]).toMatchObject({ before: 'T21', alike: 'yes' });
  });
});

describe('the car’s own test', () => {
  const ran = (at: string, outcome: string) => check('T38', at, { outcome });
  test.each([
    ['before the repair', [ran(BEFORE, 'ran and passed')], 'not run'],
    ['after it', [ran(AFTER, 'ran and passed')], 'passed'],
    ['failed', [ran(AFTER, 'ran and failed')], 'failed'],
  ] as const)('%s', (_, checks, selfTest) => {
    expect(proof({ checks: [...checks] }).selfTest).toBe(selfTest);
  });

  test('passed, it covers causes that no leak test sees', () => {
    const other = finding(['a'], SIZE);
    const flowFault = {
      ...other,
      sheet: {
        ...other.sheet,
        finding: { ...other.sheet.finding, causes: [{ id: 'purge_stuck_closed', probability: 1, places: [] }] },
      },
    } as unknown as JobFinding;
    const findings = [flowFault, JOB.findings[1]!];
    expect(proof({ findings }).notCovered.map(({ id }) => id)).toContain('F04');
    expect(proof({ findings, checks: [ran(AFTER, 'ran and passed')] }).notCovered).toEqual([]);
  });
});
