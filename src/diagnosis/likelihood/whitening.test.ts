import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveDense } from '../fit/test-problems.ts';
import { Whitening } from './whitening.ts';

interface Sample {
  readonly gapS: number;
  readonly variance: number;
  readonly slowPa: number;
  readonly fresh: boolean;
  readonly x: number;
}
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const sample: fc.Arbitrary<Sample> = fc.record({
  gapS: between(0.1, 5),
  variance: between(0.2, 30),
  slowPa: between(0.1, 20),
  fresh: fc.boolean(),
  x: between(-50, 50),
});

/** Covariance written out: white on the diagonal, slow error exp(-dt/tau) within a stretch that did not begin anew. */
function dense(samples: readonly Sample[], timeS: readonly number[], slowS: number): number[][] {
  return samples.map((a, i) =>
    samples.map((b, j) => {
      const [from, to] = i < j ? [i, j] : [j, i];
      const apart = samples.slice(from + 1, to + 1).some((s) => s.fresh);
      const slow = apart ? 0 : a.slowPa * b.slowPa * Math.exp(-(timeS[to]! - timeS[from]!) / slowS);
      return slow + (i === j ? a.variance : 0);
    }),
  );
}

describe('whitening', () => {
  it('is the inverse of the dense covariance: squares and determinant agree', () => {
    fc.assert(
      fc.property(fc.array(sample, { minLength: 1, maxLength: 12 }), between(0.3, 60), (samples, slowS) => {
        let t = 0;
        const timeS = samples.map((s) => {
          t += s.gapS;
          return t;
        });
        const w = new Whitening(
          timeS,
          samples.map((s) => s.variance),
          samples.map((s) => s.slowPa),
          samples.map(() => slowS),
          samples.map((s) => (s.fresh ? 1 : 0)),
        );
        const out = new Float64Array(samples.length + 2);
        w.apply(
          samples.map((s) => s.x),
          out,
          2,
        );
        const { x, logDeterminant } = solveDense(
          dense(samples, timeS, slowS),
          samples.map((s) => s.x),
        );
        const exact = samples.reduce((s, a, i) => s + a.x * x[i]!, 0);
        const found = out.reduce((s, v) => s + v * v, 0);
        expect(Math.abs(found - exact)).toBeLessThan(1e-8 * (1 + exact));
        expect(w.logDeterminant).toBeCloseTo(logDeterminant, 8);
        expect([out[0], out[1]]).toEqual([0, 0]);
      }),
    );
  });

  it('without slow error divides by the standard deviation', () => {
    const w = new Whitening([0, 1, 2], [4, 9, 16], [0, 0, 0], [1, 1, 1], [0, 0, 0]);
    const out = new Float64Array(3);
    w.apply([2, -6, 12], out, 0);
    expect([...out]).toEqual([1, -2, 3]);
    expect(w.logDeterminant).toBeCloseTo(Math.log(4 * 9 * 16), 12);
  });
});
