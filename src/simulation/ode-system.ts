/**
 * What the integrator needs to know of a system of ordinary differential equations.
 *
 * The first `dynamicSize` components act on each other; those after them (the ledger) only record: nothing
 * depends on them, they take no part in the error control, and they are solved exactly behind the others, so that
 * every linear invariant of the equations holds to rounding.
 */
export interface OdeSystem {
  readonly size: number;
  readonly dynamicSize: number;
  /** Non-zeros of the Jacobian, row-major size x size; absent = full. */
  readonly pattern?: Uint8Array;
  /** Called before the evaluations of a step, with the state it starts from; what is decided here holds for the step. */
  beginStep?(timeS: number, x: Float64Array): void;
  /** dx/dt into `dx`. */
  derivative(timeS: number, x: Float64Array, dx: Float64Array): void;
  /** Jacobian into `jacobian` (row-major, size x size), which arrives zeroed. */
  jacobian(timeS: number, x: Float64Array, jacobian: Float64Array): void;
  /** Partial derivative by time into `dfdt`; returns false where nothing depends on time just now. */
  timeDerivative(timeS: number, x: Float64Array, dfdt: Float64Array): boolean;
}
