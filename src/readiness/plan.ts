import type { MonitorConditions } from './conditions.ts';
import { type ForecastHour, temperatureAt } from './forecast.ts';
import { clockInWords, dateInWords, momentOf, nextDay, type WallTime, wallTime } from './local-time.ts';
import { type OwnDrive, ownDrives, ownDrivesOf, type RoutineDrive } from './own-drives.ts';
import { airProbability, conditionsOf, type LevelAdvice, levelChance, type PlanNote } from './plan-chances.ts';
import { type PatternStep, patternOf } from './route-pattern.ts';

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
  /** End of the drive. */
  readonly stopMs: number;
  readonly parkedAfterS: number;
  readonly notes: readonly PlanNote[];
}

/** What is said of a plan as a whole. */
export type PlanRemark =
  | LevelAdvice
  | { readonly kind: 'no-start' }
  | {
      readonly kind: 'by-inspection';
      readonly days: number;
      readonly date: string;
      readonly attempts: number;
      readonly probability: number;
    }
  | { readonly kind: 'not-enough' }
  /** The inspection lies beyond the forecast: what is planned is not all that can be tried. */
  | { readonly kind: 'forecast-ends'; readonly date: string }
  | { readonly kind: 'within-forecast'; readonly attempts: number; readonly probability: number }
  | { readonly kind: 'enough-by'; readonly date: string }
  /** The owner's own drives break the time parked; `probability` without them. */
  | { readonly kind: 'routine-in-the-way'; readonly probability: number }
  | { readonly kind: 'judgement' };

export type Avoidance =
  | { readonly kind: 'clearing' | 'refuelling' | 'topping-off' | 'heated-garage' }
  | { readonly kind: 'start-before' | 'key-after'; readonly seconds: number };

export interface DrivePlan {
  readonly attempts: readonly PlannedAttempt[];
  /** How to drive, the same for every attempt. */
  readonly pattern: readonly PatternStep[];
  readonly probability: number;
  readonly remarks: readonly PlanRemark[];
  readonly avoid: readonly Avoidance[];
}

const DAY_MS = 86_400_000;
const FIRST_HOUR = 5; // judgement: nobody is asked to start earlier
const LAST_HOUR = 22; // judgement
/** Between chances that are nearly alike the drive that is made anyway wins, and no hour that few people like (judgement). */
const OWN_DRIVE_LIKED = 1.05;
const ODD_HOUR_LIKED = 0.97;
const FIRST_LIKED_HOUR = 7;
const LAST_LIKED_HOUR = 20;
const SIGMA_NOW_K = 1.5; // judgement: error of an hourly forecast for the same day
const SIGMA_PER_DAY_K = 0.5; // judgement
const DRIVEN_AS_PLANNED = 0.85; // judgement: traffic
/** Share of eligible drives on which a healthy car tests; the rule asks 0.26 and 0.52 (from memory). */
const RUNS_WHEN_ELIGIBLE = 0.6; // judgement
const ENOUGH = 0.9; // judgement
const ATTEMPTS_ALIKE = 0.5; // judgement: a car that did not run once is less likely to next time
const MOST_ATTEMPTS = 14;
const LEAST_PROBABILITY = 0.02; // judgement: not worth a drive
/** So much better without the owner's own drives that it is said (judgement). */
const WORTH_SAYING = 0.1;

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** Proposes when to start over the next days, with the probability that the monitor then runs, and what to avoid. */
export function planDrives(options: PlanOptions): DrivePlan {
  const { conditions } = options.conditions;
  const level = levelChance(conditions, options.fuelLevel);
  const attempts = attemptsOf(options, level.probability);
  const probability = attempts.at(-1)?.cumulative ?? 0;
  const free =
    options.routine.length === 0 || probability >= ENOUGH
      ? undefined
      : attemptsOf({ ...options, routine: [] }, level.probability).at(-1)?.cumulative;
  return {
    attempts,
    pattern: patternOf(conditions).steps,
    probability,
    remarks: [
      ...(level.advice === undefined ? [] : [level.advice]),
      ...summary(attempts, probability, options),
      ...(free === undefined || free < probability + WORTH_SAYING
        ? []
        : [{ kind: 'routine-in-the-way', probability: free } as const]),
      { kind: 'judgement' },
    ],
    avoid: avoidances(options),
  };
}

function attemptsOf(options: PlanOptions, level: number): readonly PlannedAttempt[] {
  const { nowMs, zone, forecast, deadlineMs = Number.POSITIVE_INFINITY, routine } = options;
  const { conditions } = options.conditions;
  const lastMs = Math.min(deadlineMs, forecast.at(-1)?.momentMs ?? nowMs);
  const soakS = Math.max(0, ...conditionsOf(conditions, 'parked-before').map(({ leastS }) => leastS));
  const parkedAfterS = Math.max(0, ...conditionsOf(conditions, 'parked-after').map(({ leastS }) => leastS));
  const driveMs = patternOf(conditions).lengthS * 1000;
  const runs = options.inUseRatio === undefined ? RUNS_WHEN_ELIGIBLE : clamp(options.inUseRatio, 0.1, 0.95);
  const own = ownDrives(routine, zone, nowMs, lastMs + driveMs + parkedAfterS * 1000);
  const attempts: PlannedAttempt[] = [];
  let stoppedMs = options.stoppedMs ?? nowMs;
  let stillOpen = 1;

  for (let day = wallTime(nowMs, zone); attempts.length < MOST_ATTEMPTS; day = following(day)) {
    if (momentOf({ ...day, hour: 0, minute: 0 }, zone) > lastMs) break;
    let best: Omit<PlannedAttempt, 'cumulative'> | undefined;
    let bestLiked = 0;
    for (const startMs of candidateStarts(day, options)) {
      if (startMs < nowMs) continue;
      const between = parkedAround(startMs, driveMs, stoppedMs, own);
      const { stopMs } = between;
      const parkedS = (startMs - between.parkedFromMs) / 1000;
      const leftMs = parkedAfterS * 1000;
      if (parkedS < soakS || stopMs + leftMs > Math.min(deadlineMs, between.nextStartMs)) continue;
      const temperatureK = temperatureAt(forecast, startMs);
      if (temperatureK === undefined) continue;
      const notes: PlanNote[] = [];
      const sigmaK = SIGMA_NOW_K + (SIGMA_PER_DAY_K * (startMs - nowMs)) / DAY_MS;
      const air = { temperatureK, sigmaK, parkedS, stopMs, parkedAfterS };
      const again = attempts.length === 0 ? 1 : ATTEMPTS_ALIKE + (1 - ATTEMPTS_ALIKE) * runs;
      const probability = airProbability(conditions, options, air, notes) * level * DRIVEN_AS_PLANNED * runs * again;
      const wall = wallTime(startMs, zone);
      const liked = probability * likingOf(startMs, wall, own);
      if (liked <= bestLiked) continue;
      bestLiked = liked;
      best = {
        startMs,
        date: dateInWords(wall),
        clock: clockInWords(wall),
        parkedBeforeS: parkedS,
        temperatureK,
        probability,
        stopMs,
        parkedAfterS,
        notes,
      };
    }
    if (best === undefined || best.probability <= LEAST_PROBABILITY) continue;
    stillOpen *= 1 - best.probability;
    attempts.push({ ...best, cumulative: 1 - stillOpen });
    stoppedMs = best.stopMs;
  }
  return attempts;
}

const likingOf = (startMs: number, { hour }: WallTime, own: readonly OwnDrive[]): number =>
  own.some((drive) => drive.startMs === startMs)
    ? OWN_DRIVE_LIKED
    : hour < FIRST_LIKED_HOUR || hour > LAST_LIKED_HOUR
      ? ODD_HOUR_LIKED
      : 1;

const following = (day: WallTime): WallTime => ({ ...nextDay(day), hour: 0, minute: 0 });

/** The owner's own drives of that day, and every full hour. */
function candidateStarts(day: WallTime, { routine, zone }: PlanOptions): number[] {
  const starts = new Set(ownDrivesOf(day, routine, zone).map(({ startMs }) => startMs));
  for (let hour = FIRST_HOUR; hour <= LAST_HOUR; hour++) starts.add(momentOf({ ...day, hour, minute: 0 }, zone));
  return [...starts];
}

/**
 * When the car was parked before a start, and until when it is left alone after the drive. A drive that the owner begins while
 * the attempt lasts is part of it.
 */
function parkedAround(startMs: number, driveMs: number, stoppedMs: number, own: readonly OwnDrive[]) {
  let parkedFromMs = stoppedMs;
  let stopMs = startMs + driveMs;
  let nextStartMs = Number.POSITIVE_INFINITY;
  for (const drive of own) {
    if (drive.startMs < startMs) parkedFromMs = Math.max(parkedFromMs, drive.endMs);
    else if (drive.startMs <= stopMs) stopMs = Math.max(stopMs, drive.endMs);
    else {
      nextStartMs = drive.startMs;
      break;
    }
  }
  return { parkedFromMs, stopMs, nextStartMs };
}

function summary(
  attempts: readonly PlannedAttempt[],
  probability: number,
  { deadlineMs, nowMs, zone, forecast }: PlanOptions,
): readonly PlanRemark[] {
  const remarks: PlanRemark[] = [];
  const enough = attempts.find(({ cumulative }) => cumulative >= ENOUGH);
  const count = { attempts: attempts.length, probability };
  const dateOf = (ms: number): string => dateInWords(wallTime(ms, zone));
  if (attempts.length === 0) remarks.push({ kind: 'no-start' });
  else if (deadlineMs === undefined) remarks.push({ kind: 'within-forecast', ...count });
  else {
    // from date to date, as people count: late in the evening the day after tomorrow is still two days off
    const dayOf = (ms: number): number => Date.parse(dateOf(ms)) / DAY_MS;
    const days = Math.max(0, dayOf(deadlineMs) - dayOf(nowMs));
    remarks.push({ kind: 'by-inspection', days, date: dateOf(deadlineMs), ...count });
  }
  if (enough !== undefined) remarks.push({ kind: 'enough-by', date: enough.date });
  else if (deadlineMs !== undefined) {
    const endMs = forecast.at(-1)?.momentMs ?? nowMs;
    remarks.push(endMs < deadlineMs - DAY_MS ? { kind: 'forecast-ends', date: dateOf(endMs) } : { kind: 'not-enough' });
  }
  return remarks;
}

function avoidances({ conditions: { conditions }, garageK }: PlanOptions): readonly Avoidance[] {
  const avoid: Avoidance[] = [{ kind: 'clearing' }];
  const soakS = Math.max(0, ...conditionsOf(conditions, 'parked-before').map(({ leastS }) => leastS));
  const parkedAfterS = Math.max(0, ...conditionsOf(conditions, 'parked-after').map(({ leastS }) => leastS));
  if (soakS > 0) avoid.push({ kind: 'start-before', seconds: soakS });
  if (parkedAfterS > 0) avoid.push({ kind: 'key-after', seconds: parkedAfterS });
  if (conditionsOf(conditions, 'no-refuelling').length > 0) avoid.push({ kind: 'refuelling' });
  avoid.push({ kind: 'topping-off' });
  if (garageK !== undefined && conditionsOf(conditions, 'cold-start').length > 0) avoid.push({ kind: 'heated-garage' });
  return avoid;
}
