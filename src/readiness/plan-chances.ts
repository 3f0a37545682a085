import type { Condition } from './conditions.ts';
import { type ForecastHour, temperatureAt } from './forecast.ts';
import { withinProbability } from './normal.ts';

/** Said beside a planned start. */
export type PlanNote =
  | { readonly kind: 'near-limits'; readonly temperatureK: number }
  | { readonly kind: 'garage-too-warm' };

/** What the fuel level asks for; fractions of the tank. */
export interface LevelAdvice {
  readonly kind: 'level-unknown' | 'level-above' | 'level-below' | 'level-near-end';
  readonly level?: number;
  readonly low: number;
  readonly high: number;
}

const LEVEL_SIGMA = 0.03; // judgement: gauge and slosh
const LEVEL_UNKNOWN = 0.85; // judgement: most cars come with a level within the limits
const COOLING_TIME_S = 2 * 3600; // judgement: coolant towards the air
const WARM_ABOVE_AIR_K = 70; // common practice, no source: 90 degC against 20 degC
const HALF_HOUR_MS = 1_800_000;

export const conditionsOf = <Kind extends Condition['kind']>(conditions: readonly Condition[], kind: Kind) =>
  conditions.filter((each): each is Extract<Condition, { kind: Kind }> => each.kind === kind);

export interface Air {
  readonly temperatureK: number;
  readonly sigmaK: number;
  readonly parkedS: number;
  /** End of the drive. */
  readonly stopMs: number;
  readonly parkedAfterS: number;
}

/** Probability that the conditions on temperatures are met by a start. */
export function airProbability(
  conditions: readonly Condition[],
  { forecast, garageK }: { readonly forecast: readonly ForecastHour[]; readonly garageK?: number },
  air: Air,
  notes: PlanNote[],
): number {
  const parkedAtK = garageK ?? air.temperatureK;
  let probability = 1;
  // What holds for intake air and coolant at once is one condition: they are as warm as the place.
  const startLimits = conditionsOf(conditions, 'at-start').filter(({ channel }) => channel.endsWith('TemperatureK'));
  if (startLimits.length > 0) {
    const low = Math.max(...startLimits.map((each) => each.low ?? 0));
    const high = Math.min(...startLimits.map((each) => each.high ?? Number.POSITIVE_INFINITY));
    const within = withinProbability(parkedAtK, air.sigmaK, low, high);
    probability *= within;
    if (within < 0.5) notes.push({ kind: 'near-limits', temperatureK: parkedAtK });
  }
  for (const { mostK } of conditionsOf(conditions, 'cold-start')) {
    const left = WARM_ABOVE_AIR_K * Math.exp(-air.parkedS / COOLING_TIME_S);
    const above = parkedAtK + left - air.temperatureK;
    probability *= withinProbability(above, 1 + 0.3 * left, Number.NEGATIVE_INFINITY, mostK);
    if (garageK !== undefined && garageK - air.temperatureK > mostK) notes.push({ kind: 'garage-too-warm' });
  }
  const parkedLimits = conditionsOf(conditions, 'while-parked');
  const swings = conditionsOf(conditions, 'swing');
  if (parkedLimits.length === 0 && swings.length === 0) return probability;
  const temperatures: number[] = [];
  for (let ms = air.stopMs; ms <= air.stopMs + air.parkedAfterS * 1000; ms += HALF_HOUR_MS) {
    const outside = temperatureAt(forecast, ms);
    if (outside !== undefined) temperatures.push(garageK ?? outside);
  }
  if (temperatures.length === 0) return 0;
  const low = Math.min(...temperatures);
  const high = Math.max(...temperatures);
  for (const limits of parkedLimits)
    probability *= Math.min(
      withinProbability(low, air.sigmaK, limits.low ?? 0, limits.high ?? Number.POSITIVE_INFINITY),
      withinProbability(high, air.sigmaK, limits.low ?? 0, limits.high ?? Number.POSITIVE_INFINITY),
    );
  for (const { leastK } of swings)
    probability *= withinProbability(high - low, air.sigmaK, leastK, Number.POSITIVE_INFINITY);
  return probability;
}

/** Probability that the level is within the limits, and what to do about it. */
export function levelChance(
  conditions: readonly Condition[],
  level: number | undefined,
): { readonly probability: number; readonly advice?: LevelAdvice } {
  const limits = conditionsOf(conditions, 'throughout').filter(({ channel }) => channel === 'fuelLevel');
  if (limits.length === 0) return { probability: 1 };
  const low = Math.max(...limits.map((each) => each.low ?? 0));
  const high = Math.min(...limits.map((each) => each.high ?? 1));
  if (level === undefined) return { probability: LEVEL_UNKNOWN, advice: { kind: 'level-unknown', low, high } };
  const probability = withinProbability(level, LEVEL_SIGMA, low, high);
  const kind =
    level > high ? 'level-above' : level < low ? 'level-below' : probability < 0.9 ? 'level-near-end' : undefined;
  return { probability, ...(kind === undefined ? {} : { advice: { kind, level, low, high } }) };
}
