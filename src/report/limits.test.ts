import { describe, expect, test } from 'vitest';
import { sampleSheet } from '../../test/e2e/sample-sheet.ts';
import { exceeds, exceedsFromInterval, limitsSchema, REFERENCE_LIMITS } from './limits.ts';

const size = { median: 0.6, lo90: 0.5, hi90: 0.8 };

describe('probability of exceeding a size, from the interval', () => {
  test.each([
    [0.6, 0.5],
    [0.5, 0.95],
    [0.8, 0.05],
  ])('%f mm: %f', (diameterMm, expected) => {
    expect(exceedsFromInterval(size, diameterMm)).toBeCloseTo(expected, 2);
  });

  test('falls as the size grows', () => {
    const sizes = [0.3, 0.4, 0.5, 0.55, 0.6, 0.7, 0.9, 1.5];
    const values = sizes.map((diameterMm) => exceedsFromInterval(size, diameterMm));
    expect(values).toEqual([...values].sort((a, b) => b - a));
  });

  test('an interval without width decides', () => {
    const point = { median: 0.6, lo90: 0.6, hi90: 0.6 };
    expect(exceedsFromInterval(point, 0.5)).toBe(1);
    expect(exceedsFromInterval(point, 0.7)).toBe(0);
  });
});

test('the two reference sizes take the probability of the finding itself', () => {
  expect(REFERENCE_LIMITS.map((limit) => exceeds(sampleSheet.finding, limit))).toEqual([0.994, 0.0004]);
});

test('what is from memory is marked as such on every reference size', () => {
  for (const limit of REFERENCE_LIMITS) expect(limit.source).toContain('from memory');
});

test('a settings file replaces them, and nonsense in it is refused', () => {
  const limits = [{ diameterMm: 0.8, label: 'our limit', source: 'shop rule' }];
  expect(limitsSchema.parse({ schema: 'vaporwright-limits-1', limits }).limits).toEqual(limits);
  expect(limitsSchema.safeParse({ schema: 'vaporwright-limits-1', limits: [] }).success).toBe(false);
  expect(
    limitsSchema.safeParse({ schema: 'vaporwright-limits-1', limits: [{ diameterMm: -1, label: 'x', source: 'x' }] })
      .success,
  ).toBe(false);
});
