import type { Recording } from '../recording/recording.ts';
import { type Attempt, findAttempts } from './attempts.ts';
import { checkCondition } from './check-condition.ts';
import type { ConditionResult } from './condition-result.ts';
import type { MonitorConditions } from './conditions.ts';

export interface AttemptResult {
  readonly attempt: Attempt;
  readonly verdict: 'blocked' | 'conditions-met' | 'unknown';
  /** The condition that blocked first. */
  readonly blocker?: ConditionResult;
  readonly results: readonly ConditionResult[];
}

export interface EvaluateOptions {
  /** Time parked before the recording began, where the reader knows it, s. */
  readonly parkedBeforeS?: number;
  /** Codes stored or pending at the time; absent = not read. */
  readonly codes?: readonly string[];
}

/**
 * Holds every attempt of a recording against the conditions of the car's monitor and names the one that blocked first.
 *
 * A condition blocks at the time when it was broken, or, for what must be reached, at the end of the drive or the time
 * parked. Of two at one time the one that stands first in the list is named. What is broken after all conditions were met no
 * longer matters.
 */
export function evaluateReadiness(
  recording: Recording,
  { conditions }: MonitorConditions,
  options: EvaluateOptions = {},
): AttemptResult[] {
  return findAttempts(recording, options.parkedBeforeS).map((attempt) => {
    const results = conditions.map((condition) => checkCondition(recording, attempt, condition, options.codes));
    // When all that must be reached was reached: until then "throughout" must hold.
    const reached = results.filter(({ condition }) => condition.kind !== 'throughout');
    const doneS = reached.every(({ outcome }) => outcome === 'met')
      ? Math.max(attempt.startS, ...reached.map(({ atS }) => atS ?? attempt.startS))
      : Number.POSITIVE_INFINITY;
    const judged = results.map((result) =>
      result.outcome === 'blocked' && result.fact.kind === 'throughout' && (result.atS ?? 0) > doneS
        ? { ...result, outcome: 'met' as const, fact: { ...result.fact, afterDone: true as const } }
        : result,
    );
    let blocker: ConditionResult | undefined;
    for (const result of judged)
      if (result.outcome === 'blocked' && (blocker === undefined || (result.atS ?? 0) < (blocker.atS ?? 0)))
        blocker = result;
    return {
      attempt,
      verdict:
        blocker !== undefined
          ? 'blocked'
          : judged.some(({ outcome }) => outcome === 'unknown')
            ? 'unknown'
            : 'conditions-met',
      ...(blocker === undefined ? {} : { blocker }),
      results: judged,
    };
  });
}
