import { expect, it } from 'vitest';
import { type Size, scoreSizes } from './score-sizes.ts';
import type { Truth } from './truth.ts';

const truth = (name: string, leakMm: number, more: Partial<Truth> = {}): Truth => ({
  case: name,
  procedure: 'A',
  fault: leakMm > 0 ? 'leak' : 'none',
  faults: leakMm > 0 ? ['leak'] : ['none'],
  also_accept: [],
  confounder: 'none',
  leak_d_equiv_mm: leakMm,
  ...more,
});

const TRUTHS = [
  truth('exact', 1),
  truth('double', 0.6),
  truth('half', 0.8, { procedure: 'B' }),
  truth('absent', 2),
  truth('sound-alarm', 0),
  truth('sound', 0),
  // Not marked for size: too small, gross, or another procedure.
  truth('tiny', 0.1),
  truth('gross', 4, { fault: 'gross_leak', faults: ['gross_leak'] }),
  truth('driving', 1, { procedure: 'C' }),
];
const SIZES = new Map<string, Size>([
  ['exact', { median: 1, lo90: 0.8, hi90: 1.25 }],
  ['double', { median: 1.2, lo90: 0.7, hi90: 1.4 }],
  ['half', { median: 0.4, lo90: 0.2, hi90: 0.8 }],
  ['sound-alarm', { median: 0.5, lo90: 0, hi90: 0.9 }],
  ['sound', { median: 0.1, lo90: 0, hi90: 0.2 }],
  ['tiny', { median: 0.6, lo90: 0.5, hi90: 0.7 }],
  ['gross', { median: 4, lo90: 3, hi90: 5 }],
  ['driving', { median: 3, lo90: 2, hi90: 4 }],
]);

it('scores sizes as worked out by hand', () => {
  const s = scoreSizes(TRUTHS, SIZES, new Map());
  // |ln| of the four marked holes: 0, ln 2, ln 2, and 3 for the one without a diameter; ln 2 = 0.6931472
  expect(s.n_diameter).toBe(4);
  expect(s.no_diameter).toBe(1);
  expect(s.median_abs_ln).toBeCloseTo(Math.LN2, 12);
  // The quantile 0.9 lies 0.7 of the way from the third to the fourth: 0.6931472 + 0.7 * 2.3068528
  expect(s.p90_abs_ln).toBeCloseTo(2.3079442, 7);
  // 0, +ln 2, -ln 2
  expect(s.bias_ln).toBeCloseTo(0, 12);
  // sqrt((0 + 0.4804530 + 0.4804530 + 9) / 4)
  expect(s.rmse_ln).toBeCloseTo(1.5780451, 6);
  // Exact and half (at the very end) lie in theirs, double does not, absent has none.
  expect(s.coverage90).toBe(0.5);
  // ln(1.25/0.8) = 0.4462871, ln(1.4/0.7) = 0.6931472, ln(0.8/0.2) = 1.3862944
  expect(s.median_interval_ln_width).toBeCloseTo(Math.LN2, 12);
  expect(s.rmse_over_crb).toBeUndefined();
});

it('counts alarms and misses at both thresholds', () => {
  const { thresholds } = scoreSizes(TRUTHS, SIZES, new Map());
  // At 0.5 mm: of 1, 0.6, 0.8, 2 and 4 mm the 0.8 (said 0.4) and the 2 (said nothing) are missed.
  expect(thresholds.mm0_5).toEqual({
    false_alarm_no_fault: 0.5,
    n_no_fault: 2,
    missed: 0.4,
    n_at_or_above: 5,
    // Right: three of five above; of 0.1 mm (said 0.6) and two sound cars, one.
    accuracy: 0.5,
  });
  // At 1 mm: of 1, 2 and 4 mm one is missed; of 0.6, 0.8, 0.1 and two sound cars only the 0.6 (said 1.2) is too large.
  expect(thresholds.mm1_0).toEqual({
    false_alarm_no_fault: 0,
    n_no_fault: 2,
    missed: 1 / 3,
    n_at_or_above: 3,
    accuracy: 0.75,
  });
});

it('compares with the bound over the cases that have one', () => {
  const s = scoreSizes(
    TRUTHS,
    SIZES,
    new Map([
      ['exact', 0.3],
      ['double', 0.4],
    ]),
  );
  // sqrt((0 + 0.4804530) / 2) / sqrt((0.09 + 0.16) / 2) = 0.4901291 / 0.3535534
  expect(s.rms_crb_ln).toBeCloseTo(0.3535534, 7);
  expect(s.rmse_over_crb).toBeCloseTo(1.3862944, 6);
});

it('charges a diameter of zero and a wild one alike, and leaves coverage open without intervals', () => {
  const s = scoreSizes(
    [truth('zero', 1), truth('wild', 1)],
    new Map([
      ['zero', { median: 0 }],
      ['wild', { median: 1e6 }],
    ]),
    new Map(),
  );
  expect(s.rmse_ln).toBe(3);
  expect(s.no_diameter).toBe(1);
  expect(s.coverage90).toBeUndefined();
  expect(s.median_interval_ln_width).toBeUndefined();
});
