import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choleskyFactor, choleskySolve, choleskySolveTransposed, logDeterminant } from './cholesky.ts';

const entry = fc.double({ min: -3, max: 3, noNaN: true });

/** B B' + 1 is positive definite for every B. */
const positiveDefinite = fc
  .integer({ min: 1, max: 7 })
  .chain((n) => fc.tuple(fc.constant(n), fc.array(entry, { minLength: n * n, maxLength: n * n })))
  .map(([n, b]) => {
    const a = new Float64Array(n * n);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        for (let k = 0; k < n; k++) a[i * n + j]! += b[i * n + k]! * b[j * n + k]!;
        if (i === j) a[i * n + j]! += 1;
      }
    return { n, a };
  });

describe('Cholesky factor', () => {
  it('of a worked example', () => {
    // [[4, 2], [2, 10]] = L L' with L = [[2, 0], [1, 3]]
    const l = Float64Array.from([4, 2, 2, 10]);
    expect(choleskyFactor(l, 2)).toBe(true);
    expect([l[0], l[2], l[3]]).toEqual([2, 1, 3]);
    expect(logDeterminant(l, 2)).toBeCloseTo(Math.log(36), 12);
    const x = Float64Array.from([8, 22]);
    choleskySolve(l, 2, x);
    expect([...x]).toEqual([1, 2]);
    const z = Float64Array.from([5, 6]);
    choleskySolveTransposed(l, 2, z);
    // L' z = b
    expect(2 * z[0]! + z[1]!).toBeCloseTo(5, 12);
    expect(3 * z[1]!).toBeCloseTo(6, 12);
  });

  it('solves every positive definite system', () => {
    fc.assert(
      fc.property(positiveDefinite, fc.array(entry, { minLength: 7, maxLength: 7 }), ({ n, a }, right) => {
        const l = Float64Array.from(a);
        expect(choleskyFactor(l, n)).toBe(true);
        const x = Float64Array.from(right.slice(0, n));
        choleskySolve(l, n, x);
        for (let i = 0; i < n; i++) {
          let s = 0;
          for (let j = 0; j < n; j++) s += a[i * n + j]! * x[j]!;
          expect(s).toBeCloseTo(right[i]!, 7);
        }
      }),
    );
  });

  it('refuses a matrix that is not positive definite', () => {
    expect(choleskyFactor(Float64Array.from([1, 2, 2, 1]), 2)).toBe(false);
    expect(choleskyFactor(Float64Array.from([0]), 1)).toBe(false);
    expect(choleskyFactor(Float64Array.from([Number.NaN]), 1)).toBe(false);
  });
});
