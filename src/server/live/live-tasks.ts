/** What the threads beside a live recording are told, and what they tell. */
import type { GrowingOptions } from '../../diagnosis/growing/growing-finding.ts';
import type { ProcedureKind, Recording, ShutTime } from '../../recording/recording.ts';
import type { Car, LayoutId } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';
import type { LiveFollow } from '../contract/live.ts';

/** What was known when the recording began. */
export interface FollowTask {
  /** null: phases only. */
  readonly car: Car | null;
  readonly known: Pick<GrowingOptions, 'complaints' | 'codes'>;
  readonly procedure: ProcedureKind | null;
}

export type ToFollower =
  | { readonly kind: 'rows'; readonly rows: Recording }
  /** What a person has said; it holds for the whole recording. */
  | {
      readonly kind: 'said';
      readonly procedure: ProcedureKind | null;
      readonly ventMarks: readonly ShutTime[];
    }
  | { readonly kind: 'end' };
export type FromFollower = LiveFollow;

export interface SimulatedCarTask {
  readonly layout: LayoutId;
  readonly fault: Fault | undefined;
  readonly startS: number;
}
/** Where the car is to be found; nothing is sent to it but the end. */
export type FromSimulatedCar = { readonly address: string };
