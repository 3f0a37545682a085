/** Where the fits of a cause begin. */
import type { Cause } from '../causes/catalogue.ts';
import { type Parameter, parameterPosition, parameterValue } from '../fit/parameter.ts';
import type { Held } from './weighed.ts';

/** Parameter values of one fit in the coordinates of another cause, where its own priors reach. */
export function carryOver(from: Held, parameters: readonly Parameter[]): Float64Array {
  return Float64Array.from(parameters, (p, i) => {
    const own = from.problem.parameters[i]!;
    const z = from.fit.z[i]!;
    if (own.centre === p.centre && own.sd === p.sd) return z;
    return Math.max(-2, Math.min(2, parameterPosition(p, parameterValue(own, z))));
  });
}

/** Prior means, with each of the cause's own start values in turn. */
export function startPoints(
  parameters: readonly Parameter[],
  cause: Cause,
  refuelled: boolean,
  firstReadings: readonly number[],
): Float64Array[] {
  const zero = new Float64Array(parameters.length);
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
