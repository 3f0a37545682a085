/**
 * The size of the hole to ambient: posterior of its equivalent diameter, mixed over the causes by their probability.
 * Discharge coefficient 0.61, thin sharp edge.
 */
import { diameterFromEffectiveArea } from '../physics/equivalent-diameter.ts';
import type { Interval } from './finding.ts';
import type { Fit } from './fit/levenberg-marquardt.ts';
import { marginalise } from './fit/marginal.ts';
import type { FitProblem } from './fit/problem.ts';

/** A density over ln diameter [mm] as points with log density, and its weight in the mixture. */
export interface SizePosterior {
  readonly lnDiameterMm: readonly number[];
  readonly logDensity: readonly number[];
}

const FINE = { spacing: 0.5, widest: 0.5, depth: 6, iterations: 12, reach: 4 };

/**
 * Posterior of ln diameter.
 *
 * @param problem a fit's problem
 * @param fit its best point
 * @param key index of the parameter that is the hole's area
 */
export function sizeUnder(problem: FitProblem, fit: Fit, key: number): SizePosterior {
  const p = problem.parameters[key]!;
  const m = marginalise(problem, fit, key, FINE);
  return {
    lnDiameterMm: m.z.map((z) => Math.log(diameterFromEffectiveArea(p.centre * Math.exp(p.sd * z)) * 1e3)),
    logDensity: m.logDensity,
  };
}

/** Cells per segment when a log-linear density is turned into a histogram. */
const CELLS = 24;

interface Cell {
  readonly x: number;
  readonly mass: number;
}

function cells(p: SizePosterior): Cell[] {
  const top = Math.max(...p.logDensity);
  const list: Cell[] = [];
  let total = 0;
  for (let i = 0; i + 1 < p.lnDiameterMm.length; i++) {
    const width = (p.lnDiameterMm[i + 1]! - p.lnDiameterMm[i]!) / CELLS;
    for (let k = 0; k < CELLS; k++) {
      const u = (k + 0.5) / CELLS;
      const l = p.logDensity[i]! * (1 - u) + p.logDensity[i + 1]! * u;
      const mass = Math.exp(l - top) * width;
      total += mass;
      list.push({ x: p.lnDiameterMm[i]! + (k + 0.5) * width, mass });
    }
  }
  return total > 0 ? list.map((c) => ({ x: c.x, mass: c.mass / total })) : [{ x: p.lnDiameterMm[0]!, mass: 1 }];
}

export class SizeMixture {
  private readonly cells: readonly Cell[];

  /** @param parts posteriors with their weights, any scale */
  constructor(parts: readonly { readonly weight: number; readonly posterior: SizePosterior }[]) {
    const total = parts.reduce((s, p) => s + p.weight, 0);
    this.cells = parts
      .flatMap((p) => cells(p.posterior).map((c) => ({ x: c.x, mass: (c.mass * p.weight) / total })))
      .sort((a, b) => a.x - b.x);
  }

  /** Diameter below which the share `q` of the probability lies [mm]. */
  quantile(q: number): number {
    let s = 0;
    for (const c of this.cells) {
      s += c.mass;
      if (s >= q) return Math.exp(c.x);
    }
    return Math.exp(this.cells[this.cells.length - 1]!.x);
  }

  /** Probability of a diameter above the limit [mm]. */
  exceeds(limitMm: number): number {
    const limit = Math.log(limitMm);
    return Math.min(
      1,
      this.cells.reduce((s, c) => s + (c.x > limit ? c.mass : 0), 0),
    );
  }

  interval(): Interval {
    return { median: this.quantile(0.5), lo90: this.quantile(0.05), hi90: this.quantile(0.95) };
  }
}
