import { expect, it } from 'vitest';
import { randomStream } from './random.ts';

it('repeats itself for a seed and differs between seeds and streams', () => {
  const take = (seed: number, stream?: number) => {
    const r = randomStream(seed, stream);
    return Array.from({ length: 8 }, () => r.uniform());
  };
  expect(take(7)).toEqual(take(7));
  expect(take(7)).not.toEqual(take(8));
  expect(take(7, 0)).not.toEqual(take(7, 1));
});

it('is uniform and normal by its first moments', () => {
  const r = randomStream(2024);
  const n = 50_000;
  let outside = 0;
  let mean = 0;
  let square = 0;
  let normalMean = 0;
  let normalSquare = 0;
  let normalFourth = 0;
  for (let i = 0; i < n; i++) {
    const u = r.uniform();
    if (!(u >= 0 && u < 1)) outside++;
    mean += u / n;
    square += (u * u) / n;
    const z = r.normal();
    normalMean += z / n;
    normalSquare += (z * z) / n;
    normalFourth += z ** 4 / n;
  }
  expect(outside).toBe(0);
  // Bounds are five standard errors.
  expect(Math.abs(mean - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / n));
  expect(Math.abs(square - 1 / 3)).toBeLessThan(5 * Math.sqrt(4 / 45 / n));
  expect(Math.abs(normalMean)).toBeLessThan(5 / Math.sqrt(n));
  expect(Math.abs(normalSquare - 1)).toBeLessThan(5 * Math.sqrt(2 / n));
  expect(Math.abs(normalFourth - 3)).toBeLessThan(5 * Math.sqrt(96 / n));
});
