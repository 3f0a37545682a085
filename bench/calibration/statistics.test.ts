import { describe, expect, it } from 'vitest';
import { chiSquare, chiSquareTail, coverage, histogram } from './statistics.ts';

describe('statistics of a calibration run', () => {
  it('tail of chi-square as in the printed tables (Abramowitz and Stegun, table 26.8)', () => {
    for (const [x, dof, p] of [
      [3.841, 1, 0.05],
      [18.307, 10, 0.05],
      [30.144, 19, 0.05],
      [36.191, 19, 0.01],
      [10.117, 19, 0.95],
    ] as const)
      expect(chiSquareTail(x, dof)).toBeCloseTo(p, 4);
    expect(chiSquareTail(0, 5)).toBe(1);
  });

  it('histogram and its statistic by hand', () => {
    const counts = histogram([0, 0.1, 0.3, 0.6, 0.99, 1], 4);
    expect(counts).toEqual([2, 1, 1, 2]);
    // expected 1.5 each: 4 times 0.25 / 1.5
    expect(chiSquare(counts)).toBeCloseTo(2 / 3, 12);
  });

  it('coverage of central intervals, with the binomial error', () => {
    const below = Array.from({ length: 1000 }, (_, i) => (i + 0.5) / 1000);
    expect(coverage(below, 0.9).share).toBeCloseTo(0.9, 12);
    expect(coverage(below, 0.5).share).toBeCloseTo(0.5, 12);
    expect(coverage(below, 0.9).error).toBeCloseTo(Math.sqrt(0.09 / 1000), 12);
    expect(coverage([0.01, 0.99], 0.9).share).toBe(0);
  });
});
