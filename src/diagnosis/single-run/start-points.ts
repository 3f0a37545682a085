/** Where fits start. */
import type { LeastSquares } from '../fit/levenberg-marquardt.ts';
import type { Prior, SingleRunCause } from './prior.ts';

/** Prior means, with each of the cause's own start values in turn. */
export function startPoints<Id extends string>(priors: readonly Prior[], cause: SingleRunCause<Id>): Float64Array[] {
  const list: Float64Array[] = [];
  for (const [name, values] of Object.entries(cause.starts)) {
    const i = priors.findIndex((p) => p.name === name);
    if (i < 0) continue;
    for (const v of values) {
      const z = new Float64Array(priors.length);
      z[i] = v;
      list.push(z);
    }
  }
  return list.length > 0 ? list : [new Float64Array(priors.length)];
}

/** Furthest that a translated start may lie from the prior [z]. */
const MOST_TRANSLATED = 3;

/** The z of given quantities under other priors. */
export function translate(quantities: Float64Array, priors: readonly Prior[]): Float64Array {
  return Float64Array.from(priors, (p) => {
    const x = quantities[p.slot]!;
    const z = p.kind === 'log' ? Math.log(Math.max(x, 1e-300) / p.centre) / p.sd : (x - p.centre) / p.sd;
    return Math.max(-MOST_TRANSLATED, Math.min(MOST_TRANSLATED, z));
  });
}

/** Minus the log posterior at a point, up to constants. */
export function costAt(problem: LeastSquares, z: Float64Array): number {
  const r = new Float64Array(problem.rows);
  problem.residuals(z, r);
  let s = 0;
  for (const x of r) s += x * x;
  for (const x of z) s += x * x;
  return 0.5 * s;
}
