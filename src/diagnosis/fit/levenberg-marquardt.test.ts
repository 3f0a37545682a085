import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { laplaceLogEvidence } from '../weighing/laplace.ts';
import { levenbergMarquardt } from './levenberg-marquardt.ts';
import { linearLogEvidence, linearProblem, problemOf, solveDense } from './test-problems.ts';

const TIGHT = { mostIterations: 200, enough: 1e-10 };
const value = fc.double({ min: -2, max: 2, noNaN: true });

describe('Levenberg-Marquardt', () => {
  it('finds the minimum of the Rosenbrock valley, (1, 1), from the usual start', () => {
    // so sharp that the prior moves the minimum by less than 1e-4
    const sharp = 1e3;
    const rosenbrock = problemOf(2, 2, (z) => [sharp * 10 * (z[1]! - z[0]! ** 2), sharp * (1 - z[0]!)]);
    const fit = levenbergMarquardt(rosenbrock, [-1.2, 1], TIGHT);
    expect(fit.z[0]).toBeCloseTo(1, 4);
    expect(fit.z[1]).toBeCloseTo(1, 4);
    // what is left is the prior: (1 + 1) / 2
    expect(fit.cost).toBeCloseTo(1, 3);
    expect(fit.gaveUp).toBe(false);
  });

  it('gives the exact posterior and evidence of every linear problem with normal prior and noise', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(value, { minLength: 3, maxLength: 3 }), { minLength: 6, maxLength: 6 }),
        fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 6, maxLength: 6 }),
        (a, y) => {
          const fit = levenbergMarquardt(linearProblem(y, a), [0, 0, 0], TIGHT);
          const precision = [0, 1, 2].map((i) =>
            [0, 1, 2].map((j) => a.reduce((s, row) => s + row[i]! * row[j]!, i === j ? 1 : 0)),
          );
          const right = [0, 1, 2].map((i) => a.reduce((s, row, k) => s + row[i]! * y[k]!, 0));
          const { x } = solveDense(precision, right);
          for (let i = 0; i < 3; i++) expect(fit.z[i]).toBeCloseTo(x[i]!, 4);
          // columns too weak to matter may be left out: with that tolerance
          expect(Math.abs(laplaceLogEvidence(fit) - linearLogEvidence(y, a))).toBeLessThan(0.01);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('keeps a held parameter where it is and fits the rest given it', () => {
    // r = [3 - a - b]: with a held at 2, b minimises (1 - b)^2 + b^2
    const fit = levenbergMarquardt(linearProblem([3], [[1, 1]]), [2, 0], { ...TIGHT, hold: 0 });
    expect(fit.z[0]).toBe(2);
    expect(fit.z[1]).toBeCloseTo(0.5, 4);
  });

  it('gives up on a hopeless cause after its patience, and says so', () => {
    const flat = problemOf(1, 1, () => [100]);
    const valley = problemOf(2, 3, (z) => [10 * (z[1]! - z[0]! ** 2), 1 - z[0]!, 100]);
    expect(
      levenbergMarquardt(flat, [0], { mostIterations: 50, enough: 1e-3, hopelessAbove: 1, patience: 2 }).cost,
    ).toBe(5000);
    const fit = levenbergMarquardt(valley, [-1.2, 1], { ...TIGHT, hopelessAbove: 1, patience: 2 });
    expect(fit.gaveUp).toBe(true);
    expect(fit.iterations).toBe(2);
  });

  it('never ends above where it began', () => {
    fc.assert(
      fc.property(value, value, fc.integer({ min: 0, max: 4 }), (a, b, mostIterations) => {
        const wild = problemOf(2, 2, (z) => [5 * Math.sin(3 * z[0]!) + z[1]!, Math.exp(z[1]!) - 2 * z[0]!]);
        const before = new Float64Array(2);
        wild.residuals([a, b], before);
        const start = 0.5 * (before[0]! ** 2 + before[1]! ** 2 + a * a + b * b);
        expect(levenbergMarquardt(wild, [a, b], { mostIterations, enough: 1e-6 }).cost).toBeLessThanOrEqual(start);
      }),
    );
  });
});
