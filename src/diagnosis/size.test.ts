import { describe, expect, it } from 'vitest';
import { SizeMixture, type SizePosterior } from './size.ts';

/** A normal density over ln diameter, as points. */
function normal(mean: number, sd: number, scale = 0): SizePosterior {
  const u = Array.from({ length: 81 }, (_, i) => -5 + i / 8);
  return { lnDiameterMm: u.map((x) => mean + sd * x), logDensity: u.map((x) => scale - 0.5 * x * x) };
}

describe('mixture of size posteriors', () => {
  it('gives the quantiles of one normal, whatever the scale of its density', () => {
    for (const scale of [0, -5000, 300]) {
      const m = new SizeMixture([{ weight: 3, posterior: normal(Math.log(0.6), 0.2, scale) }]);
      expect(Math.log(m.quantile(0.5) / 0.6)).toBeCloseTo(0, 2);
      // standard normal quantile at 0.95 is 1.6449 (tables)
      expect(Math.log(m.interval().hi90 / 0.6) / 0.2).toBeCloseTo(1.6449, 1);
      expect(Math.log(m.interval().lo90 / 0.6) / 0.2).toBeCloseTo(-1.6449, 1);
      // and P(u > 1) is 0.1587
      expect(m.exceeds(0.6 * Math.exp(0.2))).toBeCloseTo(0.1587, 2);
    }
  });

  it('gives the quantiles of two apart by their weights', () => {
    const m = new SizeMixture([
      { weight: 0.3, posterior: normal(Math.log(0.1), 0.05) },
      { weight: 0.7, posterior: normal(Math.log(1), 0.05) },
    ]);
    expect(m.exceeds(0.4)).toBeCloseTo(0.7, 6);
    expect(Math.log(m.quantile(0.15) / 0.1)).toBeCloseTo(0, 2);
    expect(Math.log(m.quantile(0.65) / 1)).toBeCloseTo(0, 2);
    expect(m.quantile(0.29)).toBeLessThan(0.2);
    expect(m.quantile(0.31)).toBeGreaterThan(0.7);
    expect(m.exceeds(0.01)).toBeCloseTo(1, 9);
    expect(m.exceeds(50)).toBe(0);
  });

  it('of an exponential tail', () => {
    // density proportional to exp(-3 x) over [0, 10]: quantile q at -ln(1 - q) / 3
    const m = new SizeMixture([{ weight: 1, posterior: { lnDiameterMm: [0, 1, 10], logDensity: [0, -3, -30] } }]);
    for (const q of [0.05, 0.5, 0.9]) expect(Math.log(m.quantile(q))).toBeCloseTo(-Math.log(1 - q) / 3, 1);
  });

  it('keeps lo, median and hi in order', () => {
    const { lo90, median, hi90 } = new SizeMixture([
      { weight: 1, posterior: normal(0, 1) },
      { weight: 1, posterior: normal(-3, 0.1) },
    ]).interval();
    expect(lo90).toBeLessThan(median);
    expect(median).toBeLessThan(hi90);
  });
});
