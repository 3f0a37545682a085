import type { Condition } from './conditions.ts';

/** One step of a drive; times in s, speeds in m/s. */
export type PatternStep =
  | { readonly kind: 'idle'; readonly seconds: number }
  | { readonly kind: 'cruise'; readonly seconds: number; readonly low: number; readonly high: number }
  | { readonly kind: 'drive'; readonly seconds: number }
  | { readonly kind: 'pull'; readonly seconds: number }
  | { readonly kind: 'no-stop' }
  | { readonly kind: 'leave'; readonly seconds: number };

export interface RoutePattern {
  readonly steps: readonly PatternStep[];
  readonly lengthS: number;
}

/** More than the least, so that traffic does not spoil it (judgement). */
const MARGIN = 1.3;
const WARM_UP_S = 300;

/** How to drive so that what must be reached is reached, in order. */
export function patternOf(conditions: readonly Condition[]): RoutePattern {
  const steps: PatternStep[] = [];
  let lengthS = 0;
  const add = (seconds: number, step: PatternStep): void => {
    steps.push(step);
    lengthS += seconds;
  };
  for (const each of conditions)
    if (each.kind === 'time-in-range' && each.channel === 'vehicleSpeedMPerS' && each.low === undefined)
      add(each.leastS * MARGIN, { kind: 'idle', seconds: each.leastS * MARGIN });
  for (const each of conditions) {
    if (each.kind === 'time-in-range' && each.channel === 'vehicleSpeedMPerS' && each.low !== undefined) {
      const seconds = each.leastS * MARGIN;
      add(seconds + WARM_UP_S, { kind: 'cruise', seconds, low: each.low, high: each.high ?? each.low });
    }
    if (each.kind === 'engine-runs') add(each.leastS * MARGIN, { kind: 'drive', seconds: each.leastS * MARGIN });
    if (each.kind === 'boost') add(60, { kind: 'pull', seconds: each.leastS });
  }
  steps.push({ kind: 'no-stop' });
  for (const each of conditions) if (each.kind === 'parked-after') steps.push({ kind: 'leave', seconds: each.leastS });
  return { steps, lengthS };
}
