import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { buildPyramid, chooseBins, extent, readBins } from './pyramid.ts';

const samples = fc.array(
  fc.oneof({ weight: 9, arbitrary: fc.float({ noNaN: true, noDefaultInfinity: true }) }, fc.constant(Number.NaN)),
  {
    minLength: 1,
    maxLength: 5000,
  },
);

/** The same by hand, straight from the samples. */
function byHand(values: Float32Array, from: number, to: number): [number, number] {
  const present = [...values.subarray(from, to)].filter((value) => !Number.isNaN(value));
  return present.length === 0 ? [Number.NaN, Number.NaN] : [Math.min(...present), Math.max(...present)];
}

describe('pyramid of smallest and largest values', () => {
  test.prop([samples, fc.nat(4999), fc.integer({ min: 1, max: 5000 }), fc.integer({ min: 1, max: 400 })], {
    numRuns: 200,
  })('gives every bin its true extremes at any view', (list, from, length, least) => {
    const values = Float32Array.from(list);
    const start = Math.min(from, values.length - 1);
    const end = Math.min(values.length, start + length);
    const bins = chooseBins(start, end, least);
    const count = bins.end - bins.first;
    const min = new Float32Array(count);
    const max = new Float32Array(count);
    readBins(values, buildPyramid(values), bins, min, max);
    for (let k = 0; k < count; k++) {
      const at = (bins.first + k) * bins.size;
      const [low, high] = byHand(values, at, Math.min(values.length, at + bins.size));
      expect(min[k]).toBe(low);
      expect(max[k]).toBe(high);
    }
    // All samples of the view lie in some bin, and there are no more bins than a picture can use.
    expect(bins.first * bins.size).toBeLessThanOrEqual(start);
    expect(bins.end * bins.size).toBeGreaterThanOrEqual(end);
    expect(count).toBeLessThanOrEqual(2 * least + 2 + (end - start < 2 * least ? end - start : 0));
  });

  test.prop([samples])('knows the extremes of all', (list) => {
    const values = Float32Array.from(list);
    const [low, high] = byHand(values, 0, values.length);
    expect(extent(buildPyramid(values))).toEqual(Number.isNaN(low) ? null : [low, high]);
  });

  it('takes the samples themselves where they are few', () => {
    expect(chooseBins(100, 300, 200)).toEqual({ size: 1, first: 100, end: 300 });
    expect(chooseBins(0, 1_000_000, 1000).size).toBe(512);
  });
});
