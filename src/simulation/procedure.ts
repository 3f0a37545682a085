import type { PhaseKind, ProcedureKind } from '../recording/recording.ts';
import type { CommandId, PressureSensor } from '../system/network.ts';

/** What a condition looks at. `reading` is what the module sees: gain, offset and a stuck sensor included. */
export type Watched =
  | { readonly kind: 'reading'; readonly sensor: PressureSensor['id'] }
  | { readonly kind: 'gaugePa'; readonly space: string }
  | { readonly kind: 'fillFraction'; readonly space: string }
  | { readonly kind: 'dispensedM3' };

export interface Condition {
  readonly what: Watched;
  readonly is: 'above' | 'below';
  readonly value: number;
  /** What it means that this came true, in words of the trade. */
  readonly outcome: string;
  /** Ends the whole procedure, not only the step. */
  readonly endsProcedure?: boolean;
}

/** A command during a step: one value, or values from times after the step began. */
export type CommandPlan = number | readonly { readonly atS: number; readonly value: number }[];

/** One step of a procedure. Commands not named keep their value. */
export interface Step {
  readonly phase: PhaseKind;
  readonly commands?: Readonly<Partial<Record<CommandId, CommandPlan>>>;
  /** The step ends after this time at the latest. */
  readonly longestS: number;
  /**
   * In place of `longestS`: it ends at this time of the procedure at the latest [s], however early those before it ended.
   * For procedures that follow a recording's clock.
   */
  readonly endsAtS?: number;
  /** The step ends before, as soon as one of these is true. */
  readonly endsWhen?: readonly Condition[];
  /** The engine runs: the manifold has its own pressure. Off = manifold at ambient. */
  readonly engineRunning: boolean;
}

export interface Procedure {
  readonly kind: ProcedureKind | 'overnight-soak';
  readonly words: string;
  readonly steps: readonly Step[];
}

/** A step as it went. */
export interface StepRecord {
  readonly phase: PhaseKind;
  readonly fromS: number;
  readonly toS: number;
  /** Outcome of the condition that ended it; absent = it ran its full time. */
  readonly outcome?: string;
}
