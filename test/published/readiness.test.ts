import { describe, expect, it } from 'vitest';
import { evapInUseRatio, inUseRatios } from '../../src/readiness/in-use-ratio.ts';
import { inspect } from '../../src/readiness/inspection.ts';
import { EVAP_ONLY_RULE, FEDERAL_RULE } from '../../src/readiness/inspection-rules.ts';
import { READINESS_EN } from '../../src/readiness/text/en.ts';
import { PLAIN_METRIC, readinessFigures } from '../../src/readiness/text/figures.ts';
import { MONITORS, type MonitorName } from '../../src/recording/bus/monitor-status.ts';
import type { CarStatus, ReadCode } from '../../src/recording/bus/read-capture.ts';

const OTHERS: readonly MonitorName[] = ['evaporative system', 'catalyst', 'oxygen sensor', 'oxygen sensor heater'];

/** A car with the lamp off and so many supported monitors that have not run. */
function car(incomplete: number | readonly MonitorName[], more: Partial<CarStatus> = {}): CarStatus {
  const open = typeof incomplete === 'number' ? OTHERS.slice(0, incomplete) : incomplete;
  return {
    sinceClear: {
      scope: 'since-clear',
      lampOn: false,
      codeCount: 0,
      ignition: 'spark',
      monitors: MONITORS.map((name) => ({
        name,
        supported: OTHERS.includes(name) || open.includes(name),
        complete: !open.includes(name),
      })),
    },
    ...more,
  };
}

describe('federal allowance (40 CFR 85.2222(c) as amended by 66 FR 18156, secondary source; table K)', () => {
  for (const [year, verdicts] of [
    [1995, ['no-test', 'no-test', 'no-test', 'no-test']],
    [1996, ['pass', 'pass', 'pass', 'reject']],
    [2000, ['pass', 'pass', 'pass', 'reject']],
    [2001, ['pass', 'pass', 'reject', 'reject']],
    [2015, ['pass', 'pass', 'reject', 'reject']],
  ] as const)
    it(`model year ${year}: ${verdicts.join(', ')} with 0, 1, 2, 3 not run`, () => {
      verdicts.forEach((verdict, n) => {
        expect(inspect(FEDERAL_RULE, year, car(n), [], true).verdict).toBe(verdict);
      });
    });

  it('misfire, fuel system and components do not use the allowance up', () => {
    const status = car(['misfire', 'fuel system', 'components', 'evaporative system']);
    expect(inspect(FEDERAL_RULE, 2015, status, [], true).verdict).toBe('pass');
  });

  it('lamp commanded on for a code fails, with monitors open or not (85.2207, confirmed)', () => {
    for (const n of [0, 3]) {
      const status = car(n);
      const lit = { ...status, sinceClear: { ...status.sinceClear!, lampOn: true, codeCount: 1 } };
      expect(inspect(FEDERAL_RULE, 2015, lit, [], true).verdict).toBe('fail');
    }
  });

  it('what was not read is missing, not passed', () => {
    const inspection = inspect(FEDERAL_RULE, 2015, {}, [], true);
    expect(inspection.verdict).toBe('cannot-tell');
    expect(inspection.missing).toEqual([{ kind: 'monitor-status' }]);
  });
});

describe('variant with the evaporative monitor only (state programme rule, from memory)', () => {
  const permanent: ReadCode[] = [{ code: 'P0455', status: 'permanent', unit: '7E8' }];

  it('model year 2000 and later: only the evaporative monitor may be open', () => {
    expect(inspect(EVAP_ONLY_RULE, 2005, car(['evaporative system']), [], true).verdict).toBe('pass');
    expect(inspect(EVAP_ONLY_RULE, 2005, car(['catalyst']), [], true).verdict).toBe('reject');
    expect(inspect(EVAP_ONLY_RULE, 1998, car(['catalyst']), [], true).verdict).toBe('pass');
  });

  it('a permanent code fails from model year 2010 on, unless 15 warm-ups and 200 miles since clear', () => {
    const sinceClear = (warmUpsSinceClear: number, miles: number) =>
      inspect(
        EVAP_ONLY_RULE,
        2012,
        car(0, { warmUpsSinceClear, distanceSinceClearM: miles * 1609.344 }),
        permanent,
        true,
      ).verdict;
    expect(sinceClear(14, 500)).toBe('fail');
    expect(sinceClear(20, 199)).toBe('fail');
    expect(sinceClear(15, 200)).toBe('pass');
    expect(inspect(EVAP_ONLY_RULE, 2012, car(0), permanent, true).verdict).toBe('cannot-tell');
    expect(inspect(EVAP_ONLY_RULE, 2009, car(0), permanent, true).verdict).toBe('pass');
    expect(inspect(EVAP_ONLY_RULE, 2012, car(0), [], false).verdict).toBe('cannot-tell');
  });
});

describe('in-use ratio (13 CCR 1968.2(d)(3.2.1), from memory; worked K)', () => {
  it('16 of 50 is 0.320, 12 of 50 is 0.240, 0 of 0 is no data', () => {
    expect(evapInUseRatio({ EVAPCOMP: 16, EVAPCOND: 50 })?.ratio).toBeCloseTo(0.32, 9);
    expect(evapInUseRatio({ EVAPCOMP: 12, EVAPCOND: 50 })?.ratio).toBeCloseTo(0.24, 9);
    const none = evapInUseRatio({ EVAPCOMP: 0, EVAPCOND: 0 });
    expect(none?.ratio).toBeUndefined();
    expect(READINESS_EN.ratio(none!, readinessFigures(PLAIN_METRIC))).toMatch(/^no data/);
    expect(evapInUseRatio(undefined)).toBeUndefined();
    const all = inUseRatios({ EVAPCOMP: 12, EVAPCOND: 50, CATCOMP1: 3, CATCOND1: 0, IGNCNTR: 60 });
    expect(all.map(({ of, ratio }) => [of, ratio])).toEqual([
      ['EVAP', 0.24],
      ['CAT1', undefined],
    ]);
  });
});
