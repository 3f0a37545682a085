import { describe, expect, test } from 'vitest';
import { randomStream } from '../../simulation/random.ts';
import { effectiveShare, sampleAnnealed } from './annealed-sampler.ts';
import { gaussianAt } from './gaussian.ts';

const SETTINGS = { particles: 400, moves: 4, mostSteps: 60 };
const unit = (n: number) => {
  const h = new Float64Array(n * n);
  for (let i = 0; i < n; i++) h[i * n + i] = 1;
  return h;
};
const mean = (xs: readonly number[]) => xs.reduce((s, x) => s + x, 0) / xs.length;

describe('sampler along a path of densities', () => {
  test('a Gaussian is its own approximation: one step, exact evidence', () => {
    const n = 6;
    const q = gaussianAt(new Float64Array(n), unit(n))!;
    const log = (z: Float64Array) => -0.5 * z.reduce((s, x) => s + x * x, 0);
    const s = sampleAnnealed(log, q, randomStream(1), SETTINGS);
    expect(s.steps).toBe(1);
    expect(s.logEvidence).toBeCloseTo((n / 2) * Math.log(2 * Math.PI), 9);
  });

  test('two hills, of which the approximation knows one: evidence and weights of both', () => {
    // normal hills of equal width at 0 and 4 with weights 1 and 3: evidence ln 4, mean 3 (closed form)
    const log = (z: Float64Array) => {
      const x = z[0]!;
      return Math.log(Math.exp(-0.5 * x * x) + 3 * Math.exp(-0.5 * (x - 4) ** 2)) - 0.5 * Math.log(2 * Math.PI);
    };
    const q = gaussianAt(Float64Array.of(0), Float64Array.of(0.25))!;
    const s = sampleAnnealed(log, q, randomStream(7), SETTINGS);
    expect(s.logEvidence).toBeGreaterThan(Math.log(4) - 0.25);
    expect(s.logEvidence).toBeLessThan(Math.log(4) + 0.25);
    expect(mean(s.draws.map((z) => z[0]!))).toBeGreaterThan(2.6);
    expect(mean(s.draws.map((z) => z[0]!))).toBeLessThan(3.4);
  });

  test('a bent valley in eight dimensions, where the curvature at the top misleads', () => {
    // z1 | z0 ~ N(z0^2 - 1, 0.7), the others standard normal: normalised, so ln evidence 0 (closed form)
    const n = 8;
    const log = (z: Float64Array) => {
      let s = 0;
      for (let i = 0; i < n; i++) if (i !== 1) s += z[i]! ** 2 + Math.log(2 * Math.PI);
      const d = (z[1]! - (z[0]! ** 2 - 1)) / 0.7;
      return -0.5 * (s + d * d + Math.log(2 * Math.PI * 0.49));
    };
    const h = unit(n);
    h[1 * n + 1] = 1 / 0.49;
    const at = new Float64Array(n);
    at[1] = -1;
    const q = gaussianAt(at, h, 1.5)!;
    const s = sampleAnnealed(log, q, randomStream(3), SETTINGS);
    expect(Math.abs(s.logEvidence)).toBeLessThan(0.6);
    // E[z1] = E[z0^2] - 1 = 0, where the curvature at the top says -1
    expect(Math.abs(mean(s.draws.map((z) => z[1]!)))).toBeLessThan(0.5);
    expect(s.steps).toBeGreaterThan(1);
  });

  test('the same stream gives the same draws', () => {
    const q = gaussianAt(Float64Array.of(1, 2), Float64Array.of(2, 0.3, 0.3, 1))!;
    const log = (z: Float64Array) => -Math.abs(z[0]!) - Math.abs(z[1]!);
    const a = sampleAnnealed(log, q, randomStream(5), { particles: 20, moves: 1, mostSteps: 10 });
    const b = sampleAnnealed(log, q, randomStream(5), { particles: 20, moves: 1, mostSteps: 10 });
    expect(a).toEqual(b);
  });
});

describe('effective share of weights', () => {
  test('equal weights all count', () => expect(effectiveShare([2, 2, 2, 2], 1)).toBeCloseTo(1, 12));
  test('one weight alone counts once', () => expect(effectiveShare([0, -900, -900, -900], 1)).toBeCloseTo(0.25, 12));
});
