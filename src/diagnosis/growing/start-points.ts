/** Where the fit of a cause may begin: at the prior's centres, or from what is known of the car so far. */
import type { Cause } from '../causes/catalogue.ts';
import { type Parameter, parameterPosition, parameterValue } from '../fit/parameter.ts';

/**
 * @param parameters the cause's own
 * @param from values of z to begin with, by place; absent, the priors' centres
 * @param refuelled the recording is a filling
 * @param firstGaugePa first reading [Pa gauge]: a system that cannot breathe starts with what it holds
 */
export function startPoints(
  parameters: readonly Parameter[],
  cause: Cause,
  from: Float64Array | undefined,
  firstGaugePa: number,
  refuelled = false,
): Float64Array[] {
  const base = from ? Float64Array.from(from) : Float64Array.from(parameters, (p) => p.start ?? 0);
  const initial = parameters.findIndex((p) => p.name === 'initial');
  if (!from && initial >= 0 && cause.changes.initial) {
    base[initial] = parameterPosition(parameters[initial]!, firstGaugePa);
  }
  const list: Float64Array[] = [];
  for (const [name, values] of Object.entries(cause.starts)) {
    const i = parameters.findIndex((p) => p.name === name);
    if (i < 0) continue;
    for (const v of values) list.push(base.map((x, j) => (j === i ? v : x)));
  }
  if (list.length === 0) list.push(base);
  if (!refuelled || from) return list;
  // the plateau of a filling hangs on the two passages in series: try them wide as well
  return list.flatMap((z) => [
    z,
    z.map((x, i) => (x === 0 && (parameters[i]!.name === 'ventOpen' || parameters[i]!.name === 'pipe') ? 1 : x)),
  ]);
}

/** Values of one cause's fit in the coordinates of another, where its own priors reach. */
export function carryOver(from: readonly Parameter[], z: Float64Array, to: readonly Parameter[]): Float64Array {
  return Float64Array.from(to, (p, i) => {
    const own = from[i]!;
    if (own.centre === p.centre && own.sd === p.sd) return z[i]!;
    return Math.max(-2, Math.min(2, parameterPosition(p, parameterValue(own, z[i]!))));
  });
}
