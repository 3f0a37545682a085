/** A fit begun again without what only a side valley asks of it. */
import type { Cause } from '../causes/catalogue.ts';
import { levenbergMarquardt } from '../fit/levenberg-marquardt.ts';
import type { Held } from './weighed.ts';

/** Beyond this a part of the car or the day is far outside what is usual [z]. */
const FAR_OUT = 3;
const SETTINGS = { mostIterations: 20, enough: 0.05, patience: 6 };
/** A new fit that ends this far above the old one [ln] by then has gone wrong, and one that is less than the other better is no better. */
const GONE_WRONG = 40;
const BETTER = 0.1;

/**
 * A part of the car or the day that a fit puts far outside what is usual, though its cause does not ask for it, may have gone there in a
 * side valley: the fit is made again with it at its centre, and the better one counts.
 */
export function recentred(held: Held, cause: Cause): Held {
  const { problem, fit } = held;
  const asked = [...Object.keys(cause.changes), cause.size];
  const isFarOut = (z: number, i: number) => Math.abs(z) > FAR_OUT && !asked.includes(problem.parameters[i]!.name);
  if (!fit.z.some(isFarOut)) return held;
  const start = fit.z.map((z, i) => (isFarOut(z, i) ? 0 : z));
  const again = levenbergMarquardt(problem, start, { ...SETTINGS, hopelessAbove: fit.cost + GONE_WRONG });
  return again.cost < fit.cost - BETTER ? { problem, fit: again } : held;
}
