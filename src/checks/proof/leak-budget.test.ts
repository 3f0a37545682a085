/** The leak budget: areas add and subtract; intervals against direct integration of the two log-normals. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Interval } from '../../diagnosis/finding.ts';
import { leakBudget, minusByArea, sumByArea } from './leak-budget.ts';

const exact = (mm: number): Interval => ({ median: mm, lo90: 0.999 * mm, hi90: 1.001 * mm });
const spread = (median: number, ratio: number): Interval => ({ median, lo90: median / ratio, hi90: median * ratio });
const mm = fc.integer({ min: 10, max: 300 }).map((n) => n / 100);

describe('exact sizes', () => {
  test('3-4-5: holes of 0.3 and 0.4 mm side by side are one of 0.5 mm', () => {
    expect(sumByArea([exact(0.3), exact(0.4)])?.median).toBeCloseTo(0.5, 3);
    expect(minusByArea(exact(0.5), exact(0.4)).median).toBeCloseTo(0.3, 3);
  });

  test('what is taken away and put back is what was there', () => {
    fc.assert(
      fc.property(mm, mm, (one, other) => {
        expect(minusByArea(sumByArea([exact(one), exact(other)])!, exact(other)).median).toBeCloseTo(one, 2);
      }),
    );
  });

  test('nothing is ever less than nothing', () => {
    expect(minusByArea(exact(0.4), exact(0.5)).hi90).toBeLessThan(0.02);
  });

  test('the order of sections does not matter', () => {
    fc.assert(
      fc.property(fc.array(mm, { minLength: 2, maxLength: 3 }), (sizes) => {
        const one = sumByArea(sizes.map((size) => spread(size, 1.3)))!;
        const other = sumByArea(sizes.toReversed().map((size) => spread(size, 1.3)))!;
        expect(one.median / other.median).toBeCloseTo(1, 1);
      }),
    );
  });
});

describe('intervals', () => {
  const Z95 = 1.6448536;
  /** Normal distribution function by Simpson's rule over its density. */
  function phi(z: number): number {
    if (z < -12) return 0;
    const n = 2000;
    const h = (z + 12) / n;
    const density = (x: number): number => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
    let sum = density(-12) + density(z);
    for (let i = 1; i < n; i++) sum += (i % 2 === 1 ? 4 : 2) * density(-12 + i * h);
    return (sum * h) / 3;
  }
  /** P(total² ± part² ≤ rest²): the total's closed form, integrated over the part's density. */
  function below(total: Interval, part: Interval, rest: number, sign: 1 | -1): number {
    const lnOf = ({ median }: Interval) => Math.log(median);
    const sdOf = ({ median, hi90 }: Interval) => Math.log(hi90 / median) / Z95;
    const n = 400;
    let p = 0;
    for (let i = 0; i < n; i++) {
      const z = -6 + (12 * (i + 0.5)) / n;
      const d = Math.exp(lnOf(part) + sdOf(part) * z);
      const mass = (Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)) * (12 / n);
      const left = rest * rest - sign * d * d;
      if (left > 0) p += mass * phi((0.5 * Math.log(left) - lnOf(total)) / sdOf(total));
    }
    return p;
  }

  test.each([
    [1, 1.3, 0.5, 1.2, -1],
    [0.9, 1.15, 0.7, 1.1, -1],
    [0.62, 1.1, 0.12, 1.8, -1],
    [0.4, 1.5, 0.3, 1.4, 1],
    [1.2, 1.2, 0.2, 2, 1],
  ] as const)('of %f mm (×%f) and %f mm (×%f), sign %i', (a, ra, b, rb, sign) => {
    const [total, part] = [spread(a, ra), spread(b, rb)];
    const size = sign === 1 ? sumByArea([total, part])! : minusByArea(total, part);
    expect(below(total, part, size.lo90, sign)).toBeCloseTo(0.05, 2);
    expect(below(total, part, size.median, sign)).toBeCloseTo(0.5, 2);
    expect(below(total, part, size.hi90, sign)).toBeCloseTo(0.95, 2);
  });
});

describe('the rows', () => {
  const SECTIONS = { 'purge side': exact(0.1), 'canister and vent': exact(0.2), 'tank and neck': exact(0.8) };

  test('measured total minus repaired, beside what was measured after', () => {
    const budget = leakBudget({
      before: { wholeMm: exact(1) },
      after: { wholeMm: exact(0.6) },
      repairedMm: exact(0.8),
    });
    expect(budget?.expectedRestMm?.median).toBeCloseTo(0.6, 2);
    expect(budget?.whole.removedMm?.median).toBeCloseTo(0.8, 2);
    expect(budget?.rest).toBe('as expected');
  });

  test.each([
    [0.8, 'more than expected'],
    [0.3, 'less than expected'],
  ] as const)('%f mm where 0.6 are expected is %s', (after, rest) => {
    const side = { before: { wholeMm: exact(1) }, after: { wholeMm: exact(after) } };
    expect(leakBudget({ ...side, repairedMm: exact(0.8) })?.rest).toBe(rest);
  });

  test('the same sections before and after, and their sum', () => {
    const budget = leakBudget({
      before: { sectionsMm: SECTIONS },
      after: { sectionsMm: { ...SECTIONS, 'tank and neck': exact(0.1) } },
    });
    expect(budget?.sections.map(({ name }) => name)).toEqual(Object.keys(SECTIONS));
    expect(budget?.sum?.beforeMm?.median).toBeCloseTo(Math.sqrt(0.01 + 0.04 + 0.64), 2);
    expect(budget?.sections[2]?.removedMm?.median).toBeCloseTo(Math.sqrt(0.64 - 0.01), 2);
    expect(budget?.sections[0]?.removedMm?.median).toBeLessThan(0.05);
  });

  test('a section measured on one side only stands there without a difference', () => {
    const budget = leakBudget({ before: { sectionsMm: SECTIONS } });
    expect(budget?.sections[0]).toEqual({ name: 'purge side', beforeMm: SECTIONS['purge side'] });
    expect(budget?.rest).toBeUndefined();
  });

  test('nothing measured, no budget', () => {
    expect(leakBudget({})).toBeNull();
  });
});
