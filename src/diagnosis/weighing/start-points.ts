/** Where the fits of a cause begin. */
import type { Cause } from '../causes/catalogue.ts';
import { type Parameter, parameterPosition, parameterValue } from '../fit/parameter.ts';
import type { Held } from './weighed.ts';

/** Farthest from another prior's centre [z] that a carried value starts: the fit pulls it in as far as the recording lets it. */
const MOST_CARRIED = 5;
/** Parameters that are holes to ambient: with both valves shut the pressure sees little but their sum. */
const HOLES: readonly string[] = ['leak', 'ventShut'];

/**
 * Parameter values of one fit in the coordinates of another cause, where its own priors reach. A hole that the other cause
 * has elsewhere moves there whole.
 *
 * @param size the parameter that carries the other cause's size
 */
export function carryOver(from: Held, parameters: readonly Parameter[], size?: string): Float64Array {
  const z = Float64Array.from(parameters, (p, i) => {
    const own = from.problem.parameters[i]!;
    const at = from.fit.z[i]!;
    if (own.centre === p.centre && own.sd === p.sd) return at;
    return Math.max(-MOST_CARRIED, Math.min(MOST_CARRIED, parameterPosition(p, parameterValue(own, at))));
  });
  if (size === undefined || !HOLES.includes(size)) return z;
  const total = parameters.reduce(
    (s, p, i) => (HOLES.includes(p.name) ? s + parameterValue(from.problem.parameters[i]!, from.fit.z[i]!) : s),
    0,
  );
  parameters.forEach((p, i) => {
    if (HOLES.includes(p.name))
      z[i] = p.name === size ? Math.max(-MOST_CARRIED, Math.min(MOST_CARRIED, parameterPosition(p, total))) : 0;
  });
  return z;
}

/** Prior means, with each of the cause's own start values in turn. */
export function startPoints(
  parameters: readonly Parameter[],
  cause: Cause,
  refuelled: boolean,
  firstReadings: readonly number[],
): Float64Array[] {
  const zero = Float64Array.from(parameters, (p) => p.start ?? 0);
  if (cause.changes.initial) {
    // a system that cannot breathe starts with what it holds
    parameters.forEach((p, i) => {
      if (p.name === 'initial') zero[i] = parameterPosition(p, firstReadings[p.recording] ?? 0);
    });
  }
  const list: Float64Array[] = [];
  for (const [name, values] of Object.entries(cause.starts)) {
    const i = parameters.findIndex((p) => p.name === name);
    if (i < 0) continue;
    for (const v of values) {
      const z = Float64Array.from(zero);
      z[i] = v;
      list.push(z);
    }
  }
  if (list.length === 0) list.push(zero);
  if (!refuelled) return list;
  // the plateau of a filling hangs on the two passages in series: try them wide as well
  return list.flatMap((z) => {
    const wide = Float64Array.from(z);
    for (const name of ['ventOpen', 'pipe']) {
      const i = parameters.findIndex((p) => p.name === name);
      if (i >= 0 && wide[i] === 0) wide[i] = 1;
    }
    return [z, wide];
  });
}
