/** The Laplace approximation to the evidence of a fit. */
import { choleskyFactor, logDeterminant } from '../fit/cholesky.ts';
import type { Fit } from '../fit/levenberg-marquardt.ts';

/** Laplace approximation of ln of the integral over the parameters (their prior is standard normal). */
export function laplaceLogEvidence(fit: Fit): number {
  const n = fit.z.length;
  const l = Float64Array.from(fit.hessian);
  if (!choleskyFactor(l, n)) return -fit.cost - 1e3;
  return -fit.cost - 0.5 * logDeterminant(l, n);
}
