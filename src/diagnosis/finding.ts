/**
 * The finding: what the recordings say about the car. Plain data, so that pages, reports and machines
 * read the same thing.
 */
import type { PhaseKind, ProcedureKind } from '../recording/recording.ts';

/** Root causes that the finding can tell apart, or says that it cannot. */
export const CAUSES = [
  'none',
  'leak',
  'gross_leak',
  'purge_leak',
  'purge_stuck_closed',
  'purge_stuck_open',
  'vent_leak',
  'vent_stuck_closed',
  'vent_restricted',
  'path_blocked',
  'fill_valve_stuck_open',
  'sensor_bias',
  'sensor_gain',
  'sensor_stuck',
  'sensor_noisy',
  'canister_saturated',
  // of the pump module and of the sealed tank's isolation valve: only cars that have them
  'pump_weak',
  'pump_dead',
  'orifice_dirty',
  'changeover_leak',
  'changeover_stuck',
  'isolation_leak',
  'isolation_stuck_shut',
] as const;
export type CauseId = (typeof CAUSES)[number];

/** Where a fault can sit; places in one group look alike in the recordings given. */
export const PLACES = [
  'cap and neck',
  'tank top',
  'vapour line',
  'canister',
  'vent side',
  'purge line',
  'purge valve',
  'vent valve',
  'tank to canister',
  'fill-limit valve',
  'pressure sensor',
  'pump module',
  'isolation valve',
] as const;
export type Place = (typeof PLACES)[number];

export interface Interval {
  readonly median: number;
  readonly lo90: number;
  readonly hi90: number;
}

export interface PlaceProbability {
  /** Places that these recordings cannot tell apart. */
  readonly group: readonly Place[];
  readonly probability: number;
}

export interface CauseProbability {
  readonly id: CauseId;
  readonly probability: number;
  readonly places: readonly PlaceProbability[];
  /** Equivalent diameter of the hole to ambient under this cause; absent where the cause has none. */
  readonly diameterMm?: Interval;
  /** Natural log of the evidence relative to the best cause, prior not counted. */
  readonly relativeLogEvidence: number;
  /** Share of the log evidence against the best rival that each phase contributes (positive = for). */
  readonly byPhase: readonly PhaseEvidence[];
}

export interface PhaseEvidence {
  readonly recording: number;
  readonly phase: PhaseKind;
  readonly logEvidence: number;
}

/** Two faults at once, where one does not explain the recordings. */
export interface FaultPair {
  readonly ids: readonly [CauseId, CauseId];
  readonly probability: number;
}

/** A modelled trace to lay over the recorded one. */
export interface Overlay {
  readonly recording: number;
  readonly cause: CauseId;
  readonly timeS: readonly number[];
  readonly recordedGaugePa: readonly number[];
  readonly modelledGaugePa: readonly number[];
  /** Half-width of the 90 % band of the model, Pa. */
  readonly bandPa: readonly number[];
}

export type Verdict = 'fault' | 'no-fault-seen' | 'cannot-tell';

export interface Reason {
  /** `for`, `against` or `limits`: what speaks for the first cause, what against, what limits the finding. */
  readonly kind: 'for' | 'against' | 'limits' | 'next-recording';
  readonly text: string;
}

export interface Finding {
  readonly verdict: Verdict;
  readonly procedures: readonly (ProcedureKind | 'unknown')[];
  /** Sorted, most probable first; probabilities sum to 1. */
  readonly causes: readonly CauseProbability[];
  readonly pairs: readonly FaultPair[];
  /** Total hole to ambient, cd 0.61; null where these recordings cannot size one. */
  readonly diameterMm: Interval | null;
  readonly exceeds: { readonly mm0_5: number | null; readonly mm1_0: number | null };
  readonly reasons: readonly Reason[];
  readonly warnings: readonly string[];
  readonly overlays: readonly Overlay[];
}
