import type { Condition } from './conditions.ts';
import { figure, minutes } from './words.ts';

export interface RoutePattern {
  readonly steps: readonly string[];
  readonly lengthS: number;
}

/** More than the least, so that traffic does not spoil it (judgement). */
const MARGIN = 1.3;
const WARM_UP_S = 300;

/** How to drive so that what must be reached is reached, in order. */
export function patternOf(conditions: readonly Condition[]): RoutePattern {
  const steps: string[] = [];
  let lengthS = 0;
  const add = (seconds: number, text: string): void => {
    steps.push(text);
    lengthS += seconds;
  };
  for (const each of conditions)
    if (each.kind === 'time-in-range' && each.channel === 'vehicleSpeedMPerS' && each.low === undefined)
      add(each.leastS * MARGIN, `start and let it idle for ${minutes(each.leastS * MARGIN)}`);
  for (const each of conditions) {
    if (each.kind === 'time-in-range' && each.channel === 'vehicleSpeedMPerS' && each.low !== undefined)
      add(
        each.leastS * MARGIN + WARM_UP_S,
        `drive ${minutes(each.leastS * MARGIN)} steadily at ${figure('vehicleSpeedMPerS', each.low)} to ${figure('vehicleSpeedMPerS', each.high ?? each.low)} with a light foot, as law and traffic allow`,
      );
    if (each.kind === 'engine-runs')
      add(each.leastS * MARGIN, `drive ${minutes(each.leastS * MARGIN)} without stopping the engine`);
    if (each.kind === 'boost')
      add(60, `one full pull of ${each.leastS} s or more, as on a merging lane, warm engine, where it is safe`);
  }
  steps.push('do not stop the engine in between');
  for (const each of conditions)
    if (each.kind === 'parked-after')
      steps.push(`then switch off and leave it alone for ${minutes(each.leastS)} or more`);
  return { steps, lengthS };
}
