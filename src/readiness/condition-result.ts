import type { ChannelName } from '../recording/recording.ts';
import type { Condition } from './conditions.ts';

export interface Limits {
  readonly low?: number;
  readonly high?: number;
}

/** What was found of a condition, in figures (SI); `src/readiness/text` puts it into words. */
export type ConditionFact =
  /** The recording began with the engine running. */
  | { readonly kind: 'start-unseen' }
  | { readonly kind: 'not-recorded'; readonly channel: ChannelName; readonly whileParked?: true }
  | { readonly kind: 'at-start'; readonly channel: ChannelName; readonly value: number; readonly limits: Limits }
  | { readonly kind: 'cold-start'; readonly air: ChannelName; readonly aboveK: number; readonly mostK: number }
  /** `seconds` absent: not known; `atLeast`: the recording began while it was parked. */
  | { readonly kind: 'parked-before'; readonly leastS: number; readonly seconds?: number; readonly atLeast?: boolean }
  | {
      readonly kind: 'throughout';
      readonly channel: ChannelName;
      /** Absent: it stayed within. */
      readonly value?: number;
      readonly limits: Limits;
      /** Broken only when all else was done, so it no longer mattered. */
      readonly afterDone?: true;
    }
  | {
      readonly kind: 'time-in-range';
      readonly channel: ChannelName;
      readonly limits: Limits;
      /** The best that was reached. */
      readonly reachedS: number;
      readonly leastS: number;
      readonly unbroken: boolean;
    }
  | { readonly kind: 'engine-runs'; readonly ranS: number; readonly leastS: number }
  | { readonly kind: 'boost'; readonly reachedS: number; readonly leastS: number }
  | { readonly kind: 'parked-after'; readonly offS: number; readonly leastS: number }
  | {
      readonly kind: 'while-parked';
      readonly channel: ChannelName;
      readonly value?: number;
      readonly limits: Limits;
    }
  /** `rise` absent: no fuel was added; fraction of the tank. */
  | { readonly kind: 'no-refuelling'; readonly rise?: number }
  | { readonly kind: 'swing'; readonly swingK: number; readonly leastK: number }
  | { readonly kind: 'codes-not-read' }
  | { readonly kind: 'no-codes'; readonly found: readonly string[] };

/** How one condition went in one attempt. */
export interface ConditionResult {
  readonly condition: Condition;
  readonly outcome: 'met' | 'blocked' | 'unknown';
  /** Time on the recording's clock at which it was met or blocked, s. */
  readonly atS?: number;
  readonly fact: ConditionFact;
}
