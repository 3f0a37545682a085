import type { Condition, MonitorConditions } from './conditions.ts';
import { type ForecastHour, temperatureAt } from './forecast.ts';
import { clockInWords, dateInWords, momentOf, nextDay, type WallTime, wallTime, weekday } from './local-time.ts';
import { withinProbability } from './normal.ts';
import { patternOf } from './route-pattern.ts';
import { LOCAL_RULES_CAUTION, minutes } from './words.ts';

/** A drive that the owner makes anyway. */
export interface RoutineDrive {
  /** Wall-clock time of leaving. */
  readonly hour: number;
  readonly minute: number;
  readonly lengthS: number;
  /** 0 = Sunday; absent = every day. */
  readonly weekdays?: readonly number[];
}

export interface PlanOptions {
  readonly nowMs: number;
  readonly zone: string;
  readonly forecast: readonly ForecastHour[];
  readonly conditions: MonitorConditions;
  /** fraction of the tank; absent = not known. */
  readonly fuelLevel?: number;
  readonly routine: readonly RoutineDrive[];
  /** Temperature of the place where it is parked, when that is not outdoors, K. */
  readonly garageK?: number;
  /** Engine was stopped at; absent = now. */
  readonly stoppedMs?: number;
  /** The inspection. */
  readonly deadlineMs?: number;
  /** Of the drives that count, the share on which this car's monitor runs; from its in-use counters where they say so. */
  readonly inUseRatio?: number;
}

export interface PlannedAttempt {
  readonly startMs: number;
  readonly date: string;
  readonly clock: string;
  readonly parkedBeforeS: number;
  readonly temperatureK: number;
  /** That this attempt runs the monitor to its end. */
  readonly probability: number;
  /** That it has run by then, with the attempts before. */
  readonly cumulative: number;
  readonly pattern: readonly string[];
  readonly parkedAfterS: number;
  readonly notes: readonly string[];
}

export interface DrivePlan {
  readonly attempts: readonly PlannedAttempt[];
  readonly probability: number;
  readonly words: readonly string[];
  readonly avoid: readonly string[];
  readonly caution: string;
}

const HOUR_MS = 3_600_000;
const FIRST_HOUR = 5; // judgement: nobody is asked to start earlier
const LAST_HOUR = 22; // judgement
const SIGMA_NOW_K = 1.5; // judgement: error of an hourly forecast for the same day
const SIGMA_PER_DAY_K = 0.5; // judgement
const LEVEL_SIGMA = 0.03; // judgement: gauge and slosh
const COOLING_TIME_S = 2 * 3600; // judgement: coolant towards the air
const WARM_ABOVE_AIR_K = 70; // common practice, no source: 90 degC against 20 degC
const DRIVEN_AS_PLANNED = 0.85; // judgement: traffic
/** Share of eligible drives on which a healthy car tests; the rule asks 0.26 and 0.52 (from memory). */
const RUNS_WHEN_ELIGIBLE = 0.6; // judgement
const ENOUGH = 0.9; // judgement
const ATTEMPTS_ALIKE = 0.5; // judgement: a car that did not run once is less likely to next time

const conditionOf = <Kind extends Condition['kind']>(conditions: readonly Condition[], kind: Kind) =>
  conditions.filter((each): each is Extract<Condition, { kind: Kind }> => each.kind === kind);

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** Proposes when to start over the next days, with the probability that the monitor then runs, and what to avoid. */
export function planDrives(options: PlanOptions): DrivePlan {
  const {
    nowMs,
    zone,
    forecast,
    conditions: { conditions },
    deadlineMs,
  } = options;
  const words: string[] = [];
  const level = levelAdvice(conditions, options.fuelLevel, words);
  const lastMs = Math.min(deadlineMs ?? Number.POSITIVE_INFINITY, forecast.at(-1)?.momentMs ?? nowMs);
  const soakS = Math.max(0, ...conditionOf(conditions, 'parked-before').map(({ leastS }) => leastS));
  const parkedAfterS = Math.max(0, ...conditionOf(conditions, 'parked-after').map(({ leastS }) => leastS));
  const pattern = patternOf(conditions);
  const driveS = pattern.lengthS;
  const runs = options.inUseRatio === undefined ? RUNS_WHEN_ELIGIBLE : clamp(options.inUseRatio, 0.1, 0.95);
  const attempts: PlannedAttempt[] = [];
  let stoppedMs = options.stoppedMs ?? nowMs;
  let stillOpen = 1;
  let failedBefore = 0;
  let day: Pick<WallTime, 'year' | 'month' | 'day'> = wallTime(nowMs, zone);

  while (attempts.length < 14) {
    const midnight = momentOf({ ...day, hour: 0, minute: 0 }, zone);
    if (midnight > lastMs) break;
    let best: PlannedAttempt | undefined;
    for (const startMs of candidateStarts(day, options)) {
      if (startMs < nowMs || startMs + (driveS + parkedAfterS) * 1000 > (deadlineMs ?? Number.POSITIVE_INFINITY))
        continue;
      const parkedS = (startMs - stoppedMs) / 1000;
      if (parkedS < soakS) continue;
      const temperatureK = temperatureAt(forecast, startMs);
      if (temperatureK === undefined) continue;
      const notes: string[] = [];
      const sigmaK = SIGMA_NOW_K + (SIGMA_PER_DAY_K * (startMs - nowMs)) / (24 * HOUR_MS);
      const conditionsMet = airProbability(
        conditions,
        options,
        { temperatureK, sigmaK, startMs, parkedS, driveS, parkedAfterS },
        notes,
      );
      const again = ATTEMPTS_ALIKE ** Math.min(failedBefore, 1);
      const probability =
        conditionsMet * level * DRIVEN_AS_PLANNED * runs * (failedBefore === 0 ? 1 : again + (1 - again) * runs);
      if (best !== undefined && probability <= best.probability) continue;
      const wall = wallTime(startMs, zone);
      best = {
        startMs,
        date: dateInWords(wall),
        clock: clockInWords(wall),
        parkedBeforeS: parkedS,
        temperatureK,
        probability,
        cumulative: 0,
        pattern: pattern.steps,
        parkedAfterS,
        notes,
      };
    }
    if (best !== undefined && best.probability > 0.02) {
      stillOpen *= 1 - best.probability;
      attempts.push({ ...best, cumulative: 1 - stillOpen });
      failedBefore++;
      stoppedMs = best.startMs + driveS * 1000;
    }
    day = nextDay({ ...day, hour: 0, minute: 0 });
  }
  const probability = 1 - stillOpen;
  words.push(...summary(attempts, probability, options));
  return {
    attempts,
    probability,
    words,
    avoid: avoidances(conditions, soakS, parkedAfterS, options),
    caution: LOCAL_RULES_CAUTION,
  };
}

/** The owner's own drives of that day, and every full hour. */
function candidateStarts(day: Pick<WallTime, 'year' | 'month' | 'day'>, { routine, zone }: PlanOptions): number[] {
  const starts = new Set<number>();
  const ofDay = weekday({ ...day, hour: 0, minute: 0 });
  for (const { hour, minute, weekdays } of routine)
    if (weekdays === undefined || weekdays.includes(ofDay)) starts.add(momentOf({ ...day, hour, minute }, zone));
  for (let hour = FIRST_HOUR; hour <= LAST_HOUR; hour++) starts.add(momentOf({ ...day, hour, minute: 0 }, zone));
  return [...starts];
}

interface Air {
  readonly temperatureK: number;
  readonly sigmaK: number;
  readonly startMs: number;
  readonly parkedS: number;
  readonly driveS: number;
  readonly parkedAfterS: number;
}

/** Probability that the conditions on temperatures are met by a start. */
function airProbability(
  conditions: readonly Condition[],
  { forecast, garageK }: PlanOptions,
  air: Air,
  notes: string[],
): number {
  const parkedAtK = garageK ?? air.temperatureK;
  let probability = 1;
  // What holds for intake air and coolant at once is one condition: they are as warm as the place.
  const startLimits = conditionOf(conditions, 'at-start').filter(({ channel }) => channel.endsWith('TemperatureK'));
  if (startLimits.length > 0) {
    const low = Math.max(...startLimits.map((each) => each.low ?? 0));
    const high = Math.min(...startLimits.map((each) => each.high ?? Number.POSITIVE_INFINITY));
    const within = withinProbability(parkedAtK, air.sigmaK, low, high);
    probability *= within;
    if (within < 0.5) notes.push(`${Math.round(parkedAtK - 273.15)} °C at start is near or beyond the limits`);
  }
  for (const { mostK } of conditionOf(conditions, 'cold-start')) {
    const left = WARM_ABOVE_AIR_K * Math.exp(-air.parkedS / COOLING_TIME_S);
    const above = parkedAtK + left - air.temperatureK;
    const within = withinProbability(above, 1 + 0.3 * left, Number.NEGATIVE_INFINITY, mostK);
    probability *= within;
    if (garageK !== undefined && garageK - air.temperatureK > mostK)
      notes.push('the garage is warmer than the air outside by more than the car allows: park outdoors');
  }
  const parkedLimits = conditionOf(conditions, 'while-parked');
  const swings = conditionOf(conditions, 'swing');
  if (parkedLimits.length > 0 || swings.length > 0) {
    const fromMs = air.startMs + air.driveS * 1000;
    const temperatures: number[] = [];
    for (let ms = fromMs; ms <= fromMs + air.parkedAfterS * 1000; ms += HOUR_MS / 2) {
      const outside = temperatureAt(forecast, ms);
      if (outside !== undefined) temperatures.push(garageK ?? outside);
    }
    const low = Math.min(...temperatures);
    const high = Math.max(...temperatures);
    if (temperatures.length === 0) return 0;
    for (const limits of parkedLimits)
      probability *= Math.min(
        withinProbability(low, air.sigmaK, limits.low ?? 0, limits.high ?? Number.POSITIVE_INFINITY),
        withinProbability(high, air.sigmaK, limits.low ?? 0, limits.high ?? Number.POSITIVE_INFINITY),
      );
    for (const { leastK } of swings)
      probability *= withinProbability(high - low, air.sigmaK, leastK, Number.POSITIVE_INFINITY);
  }
  return probability;
}

function levelAdvice(conditions: readonly Condition[], fuelLevel: number | undefined, words: string[]): number {
  const limits = conditionOf(conditions, 'throughout').filter(({ channel }) => channel === 'fuelLevel');
  if (limits.length === 0) return 1;
  const low = Math.max(...limits.map((each) => each.low ?? 0));
  const high = Math.min(...limits.map((each) => each.high ?? 1));
  const range = `${Math.round(100 * low)} to ${Math.round(100 * high)} %`;
  if (fuelLevel === undefined) {
    words.push(`Fuel level is not known: it must be within ${range}, best about half.`);
    return 0.85;
  }
  const within = withinProbability(fuelLevel, LEVEL_SIGMA, low, high);
  if (fuelLevel > high)
    words.push(`Fuel level ${Math.round(100 * fuelLevel)} % is above ${range}: drive it down first, to about 60 %.`);
  else if (fuelLevel < low)
    words.push(`Fuel level ${Math.round(100 * fuelLevel)} % is below ${range}: add fuel to about half, then park.`);
  else if (within < 0.9)
    words.push(`Fuel level ${Math.round(100 * fuelLevel)} % is near the end of ${range}: keep it between 30 and 70 %.`);
  return within;
}

function summary(
  attempts: readonly PlannedAttempt[],
  probability: number,
  { deadlineMs, nowMs, zone }: PlanOptions,
): string[] {
  const words: string[] = [];
  const enough = attempts.find(({ cumulative }) => cumulative >= ENOUGH);
  const percent = Math.round(100 * probability);
  if (attempts.length === 0) words.push('No start within the forecast meets the conditions.');
  else if (deadlineMs !== undefined) {
    const days = Math.max(0, Math.round((deadlineMs - nowMs) / (24 * HOUR_MS)));
    words.push(
      `Inspection in ${days} day${days === 1 ? '' : 's'} (${dateInWords(wallTime(deadlineMs, zone))}): ${attempts.length} attempt${attempts.length === 1 ? '' : 's'}, ${percent} % that the monitor has run by then.`,
    );
    if (enough === undefined)
      words.push('That is not enough to count on: ask the inspection station for an extension or a later date now.');
  } else
    words.push(
      `${attempts.length} attempt${attempts.length === 1 ? '' : 's'} within the forecast: ${percent} % that the monitor has run after them.`,
    );
  if (enough !== undefined) words.push(`90 % is reached with the attempt of ${enough.date}.`);
  words.push(
    'Probabilities rest on judgement for traffic, forecast error and how often a healthy car tests; they are a guide, no promise.',
  );
  return words;
}

function avoidances(
  conditions: readonly Condition[],
  soakS: number,
  parkedAfterS: number,
  { garageK }: PlanOptions,
): string[] {
  const avoid = ['Do not clear codes and do not take the battery off: every monitor would start anew.'];
  if (soakS > 0) avoid.push(`No start, not even a short one, in the ${minutes(soakS)} before.`);
  if (parkedAfterS > 0)
    avoid.push(`Do not turn the key on or plug in a tool in the ${minutes(parkedAfterS)} after the drive.`);
  if (conditionOf(conditions, 'no-refuelling').length > 0)
    avoid.push('No refuelling between the drive and the end of the time parked.');
  avoid.push('No topping off; close the cap until it clicks, before the soak and not after it.');
  if (garageK !== undefined && conditionOf(conditions, 'cold-start').length > 0)
    avoid.push('No heated garage: coolant and air must be equally cold.');
  return avoid;
}
