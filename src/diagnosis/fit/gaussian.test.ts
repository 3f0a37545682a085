import { expect, test } from 'vitest';
import { randomStream } from '../../simulation/random.ts';
import { gaussianAt, logDensityOf } from './gaussian.ts';

const HESSIAN = Float64Array.of(2, 0.6, 0.6, 1);

test('density of a correlated pair against its closed form', () => {
  const g = gaussianAt(Float64Array.of(1, -1), HESSIAN)!;
  const [a, b] = [0.3, 0.4];
  const square = 2 * a * a + 2 * 0.6 * a * b + b * b;
  const expected = -0.5 * square + 0.5 * Math.log(2 - 0.36) - Math.log(2 * Math.PI);
  expect(logDensityOf(g, Float64Array.of(1 + a, -1 + b))).toBeCloseTo(expected, 12);
});

test('draws have the inverse of the curvature as covariance', () => {
  const g = gaussianAt(Float64Array.of(1, -1), HESSIAN)!;
  const random = randomStream(11);
  const n = 20_000;
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    const z = g.draw(random);
    xx += (z[0]! - 1) ** 2;
    xy += (z[0]! - 1) * (z[1]! + 1);
    yy += (z[1]! + 1) ** 2;
  }
  const determinant = 2 - 0.36;
  expect(xx / n).toBeCloseTo(1 / determinant, 1);
  expect(xy / n).toBeCloseTo(-0.6 / determinant, 1);
  expect(yy / n).toBeCloseTo(2 / determinant, 1);
});

test('a proposal keeps mean and spread, and the correlation asked for', () => {
  const g = gaussianAt(Float64Array.of(0), Float64Array.of(4))!;
  const random = randomStream(2);
  const n = 20_000;
  let [square, product] = [0, 0];
  for (let i = 0; i < n; i++) {
    const z = g.draw(random);
    const next = g.proposeFrom(z, 0.7, random);
    square += next[0]! ** 2;
    product += z[0]! * next[0]!;
  }
  expect(square / n).toBeCloseTo(0.25, 2);
  expect(product / square).toBeCloseTo(0.7, 1);
});

test('no Gaussian where the curvature is not positive', () => {
  expect(gaussianAt(Float64Array.of(0, 0), Float64Array.of(1, 2, 2, 1))).toBeUndefined();
});
