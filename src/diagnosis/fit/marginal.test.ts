import { describe, expect, it } from 'vitest';
import { SizeMixture } from '../size.ts';
import { levenbergMarquardt } from './levenberg-marquardt.ts';
import { gaussianSd, logIntegral, type MarginalSettings, marginalise } from './marginal.ts';
import { linearLogEvidence, linearProblem, problemOf, solveDense } from './test-problems.ts';

const FINE: MarginalSettings = { spacing: 0.4, widest: 0.4, depth: 10, iterations: 60, reach: 8 };
const A = [
  [1, 0.4, 0],
  [0.2, 1.5, -0.3],
  [-0.7, 0.1, 2],
  [0.5, 0.5, 0.5],
];
const Y = [1.2, -0.4, 2.1, 0.3];

/** The density as a distribution, with z in place of ln diameter. */
const distribution = (m: { z: readonly number[]; logDensity: readonly number[] }) =>
  new SizeMixture([{ weight: 1, posterior: { lnDiameterMm: m.z, logDensity: m.logDensity } }]);

describe('marginal of one parameter', () => {
  it('is exact for a linear problem: evidence, mean and spread', () => {
    const problem = linearProblem(Y, A);
    const fit = levenbergMarquardt(problem, [0, 0, 0], { mostIterations: 50, enough: 1e-10 });
    const m = marginalise(problem, fit, 0, FINE);
    expect(Math.abs(m.logEvidence - linearLogEvidence(Y, A))).toBeLessThan(0.03);
    const precision = [0, 1, 2].map((i) =>
      [0, 1, 2].map((j) => A.reduce((s, r) => s + r[i]! * r[j]!, i === j ? 1 : 0)),
    );
    const mean = solveDense(
      precision,
      [0, 1, 2].map((i) => A.reduce((s, r, k) => s + r[i]! * Y[k]!, 0)),
    ).x[0]!;
    const sd = Math.sqrt(solveDense(precision, [1, 0, 0]).x[0]!);
    expect(gaussianSd(fit.hessian, 3, 0)).toBeCloseTo(sd, 8);
    const d = distribution(m);
    for (const [q, u] of [
      [0.05, -1.6449],
      [0.25, -0.6745],
      [0.5, 0],
      [0.95, 1.6449],
    ] as const) {
      expect(Math.abs(Math.log(d.quantile(q)) - mean - u * sd)).toBeLessThan(0.04 * sd + 0.01);
    }
  });

  /** Bent and one-sided: like a hole that may be there or not, with a volume that trades off against it. */
  const bent = (z: ArrayLike<number>) => [
    2 * (Math.exp(0.9 * z[0]!) + 0.3 * z[1]! - 0.6),
    1.5 * (z[1]! - 0.5 * z[0]! ** 2),
  ];

  it('agrees with brute-force quadrature where no single Gaussian does', () => {
    const problem = problemOf(2, 2, bent);
    const fit = levenbergMarquardt(problem, [0, 0], { mostIterations: 50, enough: 1e-10 });
    const m = marginalise(problem, fit, 0, FINE);
    const step = 0.02;
    const density: number[] = [];
    const grid: number[] = [];
    for (let a = -7; a <= 7; a += step) {
      let s = 0;
      for (let b = -7; b <= 7; b += step) {
        const r = bent([a, b]);
        s += Math.exp(-0.5 * (r[0]! ** 2 + r[1]! ** 2 + a * a + b * b)) * step;
      }
      grid.push(a);
      density.push(s);
    }
    const total = density.reduce((s, x) => s + x * step, 0);
    let sum = 0;
    const below = density.map((x) => {
      sum += (x * step) / total;
      return sum;
    });
    expect(Math.abs(m.logEvidence - Math.log(total / (2 * Math.PI)))).toBeLessThan(0.03);
    const d = distribution(m);
    for (const q of [0.05, 0.25, 0.5, 0.75, 0.95]) {
      const at = grid[below.findIndex((share) => share >= q)]!;
      expect(Math.abs(Math.log(d.quantile(q)) - at)).toBeLessThan(0.05);
    }
  });

  it('begins again where the walk finds a deeper valley', () => {
    // two valleys in z0; the fit is caught in the shallower one
    const two = problemOf(1, 2, (z) => [3 * Math.cos(2 * z[0]!) + 3, 0.4 * (z[0]! + 1.57)]);
    const caught = levenbergMarquardt(two, [1.5], { mostIterations: 50, enough: 1e-10 });
    expect(caught.z[0]).toBeGreaterThan(1);
    const m = marginalise(two, caught, 0, { ...FINE, depth: 30, reach: 5 });
    expect(m.best.cost).toBeLessThan(caught.cost - 0.2);
    expect(m.best.z[0]).toBeLessThan(-1);
  });

  it('integrates a density whose logarithm is linear between the points exactly', () => {
    // exp(2 z) from 0 to 1, and 1 over [0, 2]
    expect(logIntegral([0, 0.3, 1], [0, 0.6, 2])).toBeCloseTo(Math.log((Math.exp(2) - 1) / 2), 12);
    expect(logIntegral([0, 2], [0, 0])).toBeCloseTo(Math.log(2), 12);
  });
});
