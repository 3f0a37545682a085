/** The Gaussian approximation to a posterior: its best point and the curvature there. */
import type { RandomStream } from '../../simulation/random.ts';
import { choleskyFactor, choleskySolveTransposed, logDeterminant } from './cholesky.ts';

export interface Gaussian {
  readonly mean: Float64Array;
  /** Lower Cholesky factor of the inverse covariance, row-major. */
  readonly factor: Float64Array;
  readonly logDeterminant: number;
  draw(random: RandomStream): Float64Array;
  /** A draw that keeps this much correlation with `z`; leaves the Gaussian invariant. */
  proposeFrom(z: Float64Array, correlation: number, random: RandomStream): Float64Array;
}

/**
 * @param mean best point
 * @param hessian inverse covariance, row-major
 * @param widen factor on all standard deviations: a proposal should not be narrower than its target
 * @returns undefined when the curvature is not positive
 */
export function gaussianAt(mean: Float64Array, hessian: Float64Array, widen = 1): Gaussian | undefined {
  const n = mean.length;
  const factor = Float64Array.from(hessian, (x) => x / (widen * widen));
  if (!choleskyFactor(factor, n)) return undefined;
  const deviation = (random: RandomStream): Float64Array => {
    const b = new Float64Array(n);
    for (let i = 0; i < n; i++) b[i] = random.normal();
    choleskySolveTransposed(factor, n, b);
    return b;
  };
  return {
    mean,
    factor,
    logDeterminant: logDeterminant(factor, n),
    draw: (random) => deviation(random).map((x, i) => x + mean[i]!),
    proposeFrom: (z, correlation, random) => {
      const step = Math.sqrt(1 - correlation * correlation);
      return deviation(random).map((x, i) => mean[i]! + correlation * (z[i]! - mean[i]!) + step * x);
    },
  };
}

/** ln of the normalised density at z. */
export function logDensityOf(g: Gaussian, z: Float64Array): number {
  const n = g.mean.length;
  let square = 0;
  // |L' (z - mean)|^2
  for (let j = 0; j < n; j++) {
    let s = 0;
    for (let i = j; i < n; i++) s += g.factor[i * n + j]! * (z[i]! - g.mean[i]!);
    square += s * s;
  }
  return -0.5 * square + 0.5 * g.logDeterminant - 0.5 * n * Math.log(2 * Math.PI);
}
