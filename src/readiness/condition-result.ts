import type { Condition } from './conditions.ts';

/** How one condition went in one attempt. */
export interface ConditionResult {
  readonly condition: Condition;
  readonly outcome: 'met' | 'blocked' | 'unknown';
  /** Time on the recording's clock at which it was met or blocked, s. */
  readonly atS?: number;
  /** What was found and what was wanted, with figures. */
  readonly words: string;
}
