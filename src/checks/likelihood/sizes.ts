/** Densities of a reading under a tight system and under a leak, and the size that a reading speaks for. */
import type { Interval } from '../../diagnosis/finding.ts';

/** ln of the median diameter of holes that bring a car in, mm, and its spread. Judgement, as in the finding's priors. */
const LEAK_LN_MM = { centre: Math.log(0.75), sd: 0.9 };
/** A tight car's remaining seep, as a half-normal of the diameter, mm. Judgement. */
const TIGHT_MM = 0.13;

/** Diameters that are integrated over, mm. */
const LN_FROM = Math.log(0.02);
const LN_TO = Math.log(20);
const CELLS = 240;

export interface SizeReading {
  readonly tight: number;
  readonly leak: number;
  /** Under a prior even in ln diameter: what the reading alone says, mm. */
  readonly diameterMm: Interval;
}

const GRID: readonly number[] = Array.from({ length: CELLS }, (_, i) =>
  Math.exp(LN_FROM + ((i + 0.5) / CELLS) * (LN_TO - LN_FROM)),
);

/**
 * @param likelihood density of what was read when the hole has this diameter [mm]
 */
export function sizeReading(likelihood: (diameterMm: number) => number): SizeReading {
  const step = (LN_TO - LN_FROM) / CELLS;
  let tight = 0;
  let leak = 0;
  let tightMass = 0;
  let leakMass = 0;
  const weights: number[] = [];
  for (const d of GRID) {
    const l = likelihood(d);
    const asTight = Math.exp(-0.5 * (d / TIGHT_MM) ** 2) * d * step;
    const asLeak = Math.exp(-0.5 * ((Math.log(d) - LEAK_LN_MM.centre) / LEAK_LN_MM.sd) ** 2) * step;
    tight += l * asTight;
    leak += l * asLeak;
    tightMass += asTight;
    leakMass += asLeak;
    weights.push(l);
  }
  return { tight: tight / tightMass, leak: leak / leakMass, diameterMm: quantiles(weights) };
}

function quantiles(weights: readonly number[]): Interval {
  const total = weights.reduce((a, b) => a + b, 0);
  const at = (q: number): number => {
    let sum = 0;
    for (let i = 0; i < weights.length; i++) {
      sum += weights[i]! / total;
      if (sum >= q) return GRID[i]!;
    }
    return GRID[GRID.length - 1]!;
  };
  return total > 0
    ? { median: at(0.5), lo90: at(0.05), hi90: at(0.95) }
    : { median: GRID[0]!, lo90: GRID[0]!, hi90: GRID[GRID.length - 1]! };
}

/** Normal density with a floor, so that an outlier does not decide alone. */
export function steady(x: number, mean: number, sd: number): number {
  return (
    (0.99 * Math.exp(-0.5 * ((x - mean) / sd) ** 2) + (0.01 * Math.exp(-0.5 * ((x - mean) / (10 * sd)) ** 2)) / 10) / sd
  );
}

/** Density of ln x. */
export const steadyLn = (x: number, median: number, sd: number): number => steady(Math.log(x), Math.log(median), sd);
