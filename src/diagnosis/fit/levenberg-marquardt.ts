/**
 * Most probable parameters of a cause: Levenberg-Marquardt on
 *   f(z) = 1/2 |r(z)|^2 + 1/2 |z|^2,
 * r whitened residuals, z standard normal parameters.
 * Source: Nocedal and Wright, Numerical Optimization, 2nd ed. 2006, ch. 10; Marquardt 1963.
 */
import { choleskyFactor, choleskySolve } from './cholesky.ts';

/** What the fit needs of a problem: whitened residuals and the model's derivatives, in prior-scaled parameters. */
export interface LeastSquares {
  /** Number of parameters. */
  readonly size: number;
  /** Number of residuals. */
  readonly rows: number;
  residuals(z: ArrayLike<number>, out: Float64Array): void;
  /**
   * Derivatives of the model (not of the residual), column by column: `out[j * rows + k]`; `z` is that of the last call.
   * Columns marked in `skip` keep what `out` holds.
   */
  jacobian(z: ArrayLike<number>, out: Float64Array, skip?: Uint8Array): void;
}

export interface FitSettings {
  readonly mostIterations: number;
  /** Stop once a full Gauss-Newton step promises less than this decrease of f. */
  readonly enough: number;
  /** Give up once f is still above this after `patience` iterations. */
  readonly hopelessAbove?: number;
  readonly patience?: number;
  /** Parameter held at its start value. */
  readonly hold?: number;
}

export interface Fit {
  readonly z: Float64Array;
  /** f at z: minus the log posterior up to constants. */
  readonly cost: number;
  /** J'J + 1 at z, row-major. */
  readonly hessian: Float64Array;
  readonly residuals: Float64Array;
  readonly iterations: number;
  readonly gaveUp: boolean;
}

/**
 * A column whose squared norm is below this changes the fit by less than a tenth of its prior's standard deviation and
 * the evidence by less than 0.005; it is worked out anew only now and then.
 */
const QUIET_NORM = 0.003;
const REFRESH_EVERY = 4;

/** Longest step in any parameter, in prior standard deviations. */
const LONGEST_STEP = 2;

export function levenbergMarquardt(problem: LeastSquares, start: ArrayLike<number>, settings: FitSettings): Fit {
  const n = problem.size;
  const m = problem.rows;
  let z: Float64Array = Float64Array.from(start);
  let trial: Float64Array = new Float64Array(n);
  let r: Float64Array = new Float64Array(m);
  let rTrial: Float64Array = new Float64Array(m);
  const jac = new Float64Array(n * m);
  const hessian = new Float64Array(n * n);
  const a = new Float64Array(n * n);
  const gradient = new Float64Array(n);
  const step = new Float64Array(n);
  const costOf = (res: Float64Array, at: Float64Array) => {
    let s = 0;
    for (let i = 0; i < m; i++) s += res[i]! * res[i]!;
    for (let i = 0; i < n; i++) s += at[i]! * at[i]!;
    return 0.5 * s;
  };
  problem.residuals(z, r);
  let cost = costOf(r, z);
  let lambda = 0.01;
  let iterations = 0;
  let gaveUp = false;
  const quiet = new Uint8Array(n);
  /** Normal equations at z; returns what a full Gauss-Newton step promises to gain. */
  const linearise = (): number => {
    normalEquations(jac, r, z, m, n, hessian, gradient);
    if (settings.hold !== undefined) holdParameter(hessian, gradient, n, settings.hold);
    a.set(hessian);
    if (!choleskyFactor(a, n)) return Number.POSITIVE_INFINITY;
    step.set(gradient);
    choleskySolve(a, n, step);
    let s = 0;
    for (let i = 0; i < n; i++) s += gradient[i]! * step[i]!;
    return 0.5 * s;
  };
  while (true) {
    let refresh = iterations % REFRESH_EVERY === 0;
    problem.jacobian(z, jac, refresh ? undefined : quiet);
    let decrement = linearise();
    if (decrement < settings.enough && !refresh) {
      // nothing left to gain, unless a column that was quiet has come to life
      refresh = true;
      problem.jacobian(z, jac);
      decrement = linearise();
    }
    if (refresh) markQuiet(jac, m, n, quiet);
    if (iterations >= settings.mostIterations || decrement < settings.enough) break;
    if (
      settings.hopelessAbove !== undefined &&
      iterations >= (settings.patience ?? 4) &&
      cost > settings.hopelessAbove
    ) {
      gaveUp = true;
      break;
    }
    iterations++;
    let improved = false;
    let promised = 0;
    for (let tries = 0; tries < 8; tries++) {
      a.set(hessian);
      for (let i = 0; i < n; i++) a[i * n + i] = hessian[i * n + i]! * (1 + lambda);
      if (!choleskyFactor(a, n)) {
        lambda = Math.max(lambda * 10, 1e-3);
        continue;
      }
      step.set(gradient);
      choleskySolve(a, n, step);
      let longest = 0;
      for (let i = 0; i < n; i++) longest = Math.max(longest, Math.abs(step[i]!));
      const scale = longest > LONGEST_STEP ? LONGEST_STEP / longest : 1;
      promised = 0;
      for (let i = 0; i < n; i++) {
        trial[i] = z[i]! + scale * step[i]!;
        promised += gradient[i]! * step[i]! * scale * (1 - 0.5 * scale);
      }
      problem.residuals(trial, rTrial);
      const c = costOf(rTrial, trial);
      if (c < cost) {
        const gained = cost - c;
        [z, trial] = [trial, z];
        [r, rTrial] = [rTrial, r];
        cost = c;
        lambda = gained > 0.5 * promised ? Math.max(lambda / 8, 1e-7) : lambda;
        improved = true;
        break;
      }
      if (promised < 0.1 * settings.enough) break;
      lambda = Math.max(lambda * 6, 1e-4);
    }
    if (!improved) {
      // the residuals kept inside the problem are those of the last trial
      problem.residuals(z, r);
      problem.jacobian(z, jac, quiet);
      normalEquations(jac, r, z, m, n, hessian, gradient);
      break;
    }
  }
  return { z, cost, hessian, residuals: r, iterations, gaveUp };
}

function markQuiet(jac: Float64Array, m: number, n: number, quiet: Uint8Array): void {
  for (let j = 0; j < n; j++) {
    let s = 0;
    for (let k = 0; k < m; k++) s += jac[j * m + k]! ** 2;
    quiet[j] = s < QUIET_NORM ? 1 : 0;
  }
}

/** hessian = J'J + 1, gradient = J'r - z: the downhill direction of f. */
function normalEquations(
  jac: Float64Array,
  r: Float64Array,
  z: Float64Array,
  m: number,
  n: number,
  hessian: Float64Array,
  gradient: Float64Array,
): void {
  for (let i = 0; i < n; i++) {
    const ci = i * m;
    let g = 0;
    for (let k = 0; k < m; k++) g += jac[ci + k]! * r[k]!;
    gradient[i] = g - z[i]!;
    for (let j = 0; j <= i; j++) {
      const cj = j * m;
      let s = 0;
      for (let k = 0; k < m; k++) s += jac[ci + k]! * jac[cj + k]!;
      hessian[i * n + j] = s;
      hessian[j * n + i] = s;
    }
    hessian[i * n + i]! += 1;
  }
}

function holdParameter(hessian: Float64Array, gradient: Float64Array, n: number, held: number): void {
  gradient[held] = 0;
  for (let i = 0; i < n; i++) {
    hessian[i * n + held] = 0;
    hessian[held * n + i] = 0;
  }
  hessian[held * n + held] = 1;
}
