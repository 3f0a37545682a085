/** Posteriors of a hole's size: from the grid of a fit, and mixed over the forms of one cause. */
import { diameterFromEffectiveArea } from '../../physics/equivalent-diameter.ts';
import { logIntegral } from '../fit/marginal.ts';
import type { Prior } from './prior.ts';

/** ln of equivalent diameters in mm (cd 0.61), increasing, and the log density there. */
export interface SizeDensity {
  readonly lnDiameterMm: readonly number[];
  readonly logDensity: readonly number[];
}

/** The density over z of an area's prior, as one over ln diameter. */
export function sizeOf(grid: {
  readonly prior: Prior;
  readonly z: readonly number[];
  readonly logDensity: readonly number[];
}): SizeDensity {
  const { prior, z, logDensity } = grid;
  return {
    lnDiameterMm: z.map((x) => Math.log(diameterFromEffectiveArea(prior.centre * Math.exp(prior.sd * x)) * 1e3)),
    logDensity,
  };
}

/** Far below anything that counts, ln. */
const NOTHING = -60;
/** Where a density ends, it falls to nothing within this [ln mm]. */
const EDGE = 1e-4;

/** Mixture of densities by their weights (ln, any scale), on the union of their points. */
export function mixSizes(parts: readonly (SizeDensity & { readonly logWeight: number })[]): SizeDensity {
  if (parts.length === 1) return { lnDiameterMm: parts[0]!.lnDiameterMm, logDensity: parts[0]!.logDensity };
  const top = Math.max(...parts.map((p) => p.logWeight));
  const used = parts
    .filter((p) => p.logWeight > top - 7)
    .map((p) => ({ ...p, shift: p.logWeight - top - logIntegral(p.lnDiameterMm, p.logDensity) }));
  const points = used.flatMap((p) => {
    const first = p.lnDiameterMm[0]!;
    const last = p.lnDiameterMm[p.lnDiameterMm.length - 1]!;
    return [first - EDGE, ...p.lnDiameterMm, last + EDGE];
  });
  const lnDiameterMm = [...new Set(points)].sort((a, b) => a - b);
  const logDensity = lnDiameterMm.map((x) => {
    const logs = used.map((p) => p.shift + at(p, x));
    const most = Math.max(...logs);
    return most + Math.log(logs.reduce((s, l) => s + Math.exp(l - most), 0));
  });
  return { lnDiameterMm, logDensity };
}

/** Log density at a point, straight lines between the grid's points, nothing outside. */
function at(p: SizeDensity, x: number): number {
  const { lnDiameterMm: xs, logDensity } = p;
  if (x < xs[0]! || x > xs[xs.length - 1]!) return NOTHING;
  let k = 0;
  while (k + 2 < xs.length && xs[k + 1]! < x) k++;
  const width = xs[k + 1]! - xs[k]!;
  const u = width > 0 ? (x - xs[k]!) / width : 0;
  return logDensity[k]! * (1 - u) + logDensity[k + 1]! * u;
}
