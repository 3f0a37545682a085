/** What is asked of the worker, and what comes back: plain data and typed arrays. */
import type { SimulationFailure } from '../../simulation/failure.ts';
import type { StepRecord } from '../../simulation/procedure.ts';
import type { Car, LayoutId } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';
import type { CommandId } from '../../system/network.ts';
import type { Playable } from './procedures.ts';
import type { RecordedPlan } from './recorded-plan.ts';

/** The system that is drawn: a car file, or a layout with the filler's two choices and the project's defaults. */
export interface DrawnSystem {
  readonly layout: LayoutId;
  readonly closure: 'capped' | 'capless';
  readonly hasRecovery: boolean;
  readonly car?: Car;
  /** Share of the tank filled with fuel at the start; absent = the default. */
  readonly fillFraction?: number;
}

export interface PlayRequest {
  readonly system: DrawnSystem;
  readonly faults: readonly Fault[];
  readonly procedure: Playable;
  /** Play it as it was recorded: with its steps, its commands and its day in place of the procedure's own. */
  readonly recorded?: RecordedPlan;
  /** Fewer samples and a looser tolerance, while a slider moves. */
  readonly isCoarse: boolean;
}

export interface PlayedRun {
  /** What it is a run of. */
  readonly request: PlayRequest;
  readonly timeS: Float32Array;
  /** By trace name, `tank.gaugePa`, `purge.flowKgPerS`. */
  readonly traces: Readonly<Record<string, Float32Array>>;
  /** Gas that has gone through each passage since the start, kg, by passage. */
  readonly passedKg: Readonly<Record<string, Float64Array>>;
  /** What the module's sensors read, by sensor. */
  readonly readings: Readonly<Record<string, Float32Array>>;
  /** Commands from each of these times on. */
  readonly commandTimesS: readonly number[];
  readonly commands: readonly Readonly<Record<CommandId, number>>[];
  readonly steps: readonly StepRecord[];
  readonly durationS: number;
  /** As it was recorded: the purge valve's flow makes the draw what was recorded. */
  readonly isDrawMatched: boolean;
  /** Where it could not be carried on. */
  readonly failure?: Pick<SimulationFailure, 'reason' | 'timeS' | 'part'>;
  readonly isCoarse: boolean;
  /** What it took to compute, ms. */
  readonly tookMs: number;
}

export type WorkerAnswer =
  | { readonly id: number; readonly run: PlayedRun }
  | { readonly id: number; readonly error: string };
