import type { RosenbrockTableau } from './rosenbrock-tableaus.ts';

export interface IntegratorOptions {
  readonly tableau?: RosenbrockTableau;
  /** Relative tolerance per step. */
  readonly relativeTolerance: number;
  /** Absolute tolerance per component, in the unit of that component. */
  readonly absoluteTolerance: Float64Array;
  readonly maxStepS?: number;
  /** Fixed step without error control, for measuring the order of the method. */
  readonly fixedStepS?: number;
  readonly maxSteps?: number;
}

/** Why a step could not be made. */
export interface StepFailure {
  readonly reason: 'step-too-small' | 'singular' | 'not-finite' | 'too-many-steps';
  /** Component with the largest scaled error, or the one that is not finite. */
  readonly component: number;
}

export const MAX_STEPS_DEFAULT = 200_000; // [-] judgement: an overnight soak takes some thousand
const SAFETY = 0.9; // [-] usual (Hairer & Wanner, Solving ODEs II, IV.7)
const GROW_MOST = 6; // [-] Hairer's RODAS
const SHRINK_MOST = 0.2; // [-] Hairer's RODAS
export const STEP_FLOOR = 1e-13; // [-] of the time scale; rounding of t + h

/**
 * Factor for the step after an accepted one: by the error, and by how the error changed (predictive controller of
 * Gustafsson, as in Hairer's code). `previousS` 0 = no step before.
 *
 * @param error scaled error of the step, 1 = just allowed
 * @param errorOld that of the step before
 * @param stepS the step [s]
 * @param previousS the step before, 0 = none [s]
 * @param order order of the method
 * @returns factor for the next step
 */
export function growth(error: number, errorOld: number, stepS: number, previousS: number, order: number): number {
  let factor = SAFETY * Math.max(error, 1e-10) ** (-1 / order);
  if (previousS > 0) {
    const change = Math.max(errorOld, 1e-2) / (error * error + 1e-300);
    factor = Math.min(factor, SAFETY * (stepS / previousS) * change ** (1 / order));
  }
  return Math.min(GROW_MOST, Math.max(SHRINK_MOST, factor));
}

/**
 * Factor for another attempt after a step whose scaled error was above 1.
 *
 * @param error scaled error of the step, above 1
 * @param order order of the method
 * @returns factor for the next attempt
 */
export function shrink(error: number, order: number): number {
  return Math.max(SHRINK_MOST, SAFETY * error ** (-1 / order));
}
