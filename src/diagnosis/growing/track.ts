/**
 * One line of thought about one cause: parameters that follow the recording as it grows, by one damped Gauss-Newton
 * step at a time, each from where the last ended.
 */
import { choleskyFactor, choleskySolve, logDeterminant } from '../fit/cholesky.ts';
import type { Fit } from '../fit/levenberg-marquardt.ts';
import type { FitProblem } from '../fit/problem.ts';
import type { FollowedProblem } from './followed-problem.ts';

/** A step that lowers f by less than this has arrived. */
const ENOUGH = 0.05;
const MOST_TRIALS = 3;
/** Damping from which on a small step does not mean that the fit has arrived, and the most a step begins with. */
const HEAVY = 0.1;
const HEAVIEST = 3;
/** After so many vain steps in a row a track has arrived where it can. */
const MOST_FAILED = 3;
/** Longest step in any parameter, in prior standard deviations. */
const LONGEST_STEP = 2;
/** Columns whose squared norm is below this are worked out anew only every few steps. */
const QUIET_NORM = 0.01;
const REFRESH_EVERY = 4;

export class Track<P extends FollowedProblem = FitProblem> {
  problem: P;
  z: Float64Array;
  cost = Number.POSITIVE_INFINITY;
  residuals = new Float64Array(0);
  /** Whitened derivatives at the start of the last step, column by column, and J'J + 1; absent before the first. */
  jacobian: Float64Array | undefined;
  hessian: Float64Array | undefined;
  /** What the last step gained, and when it was made [s]. */
  gained = Number.POSITIVE_INFINITY;
  steppedS = Number.NEGATIVE_INFINITY;
  /** How much worse than the best of all causes it was after the last step [ln]. */
  gapThen = 0;
  steps = 0;
  private lambda = 0.01;
  /** Steps in a row that found nothing better. */
  private failed = 0;
  private quiet: Uint8Array;

  constructor(problem: P, z: Float64Array) {
    this.problem = problem;
    this.z = z;
    this.quiet = new Uint8Array(problem.size);
  }

  get arrived(): boolean {
    return this.gained < ENOUGH;
  }

  /** Puts the track on a problem with more data; parameters that are new start at their prior's centre. */
  follow(problem: P): void {
    if (!sameParameters(this.problem.parameters, problem.parameters)) {
      this.z = carry(this.problem.parameters, this.z, problem.parameters);
      this.quiet = new Uint8Array(problem.size);
      this.hessian = undefined;
      this.steps = 0;
      this.gained = Number.POSITIVE_INFINITY;
    }
    this.problem = problem;
    this.jacobian = undefined;
    this.evaluate();
  }

  /** Cost of the present parameters: one run of the model. */
  evaluate(): void {
    this.residuals = new Float64Array(this.problem.rows);
    this.problem.residuals(this.z, this.residuals);
    this.cost = costOf(this.residuals, this.z);
  }

  step(nowS: number): void {
    const { problem } = this;
    const n = problem.size;
    const m = problem.rows;
    // the derivatives are taken where the problem was last run
    problem.residuals(this.z, this.residuals);
    this.cost = costOf(this.residuals, this.z);
    const jacobian = new Float64Array(n * m);
    const fresh = this.steps % REFRESH_EVERY === 0;
    problem.jacobian(this.z, jacobian, fresh ? undefined : this.quiet);
    if (fresh) for (let j = 0; j < n; j++) this.quiet[j] = squaredNorm(jacobian, j * m, m) < QUIET_NORM ? 1 : 0;
    this.jacobian = jacobian;
    this.hessian = hessianOf(jacobian, n, m);
    this.steps++;
    this.steppedS = nowS;
    this.gained = this.search(jacobian, this.hessian);
  }

  private search(jacobian: Float64Array, hessian: Float64Array): number {
    const n = this.z.length;
    const m = this.problem.rows;
    const gradient = gradientOf(jacobian, this.residuals, this.z);
    const a = new Float64Array(n * n);
    this.lambda = Math.min(this.lambda, HEAVIEST);
    const trialResiduals = new Float64Array(m);
    for (let tries = 0; tries < MOST_TRIALS; tries++) {
      a.set(hessian);
      for (let i = 0; i < n; i++) a[i * n + i] = hessian[i * n + i]! * (1 + this.lambda);
      if (!choleskyFactor(a, n)) {
        this.lambda = Math.max(10 * this.lambda, 1e-3);
        continue;
      }
      const step = Float64Array.from(gradient);
      choleskySolve(a, n, step);
      let longest = 0;
      for (const s of step) longest = Math.max(longest, Math.abs(s));
      const scale = longest > LONGEST_STEP ? LONGEST_STEP / longest : 1;
      let promised = 0;
      for (let i = 0; i < n; i++) promised += gradient[i]! * step[i]! * scale * (1 - 0.5 * scale);
      const trial = this.z.map((v, i) => v + scale * step[i]!);
      this.problem.residuals(trial, trialResiduals);
      const cost = costOf(trialResiduals, trial);
      if (cost < this.cost) {
        const gained = this.cost - cost;
        this.failed = 0;
        this.z = trial;
        this.residuals = trialResiduals;
        this.cost = cost;
        this.lambda = Math.max(this.lambda / (gained > 0.5 * promised ? 8 : 2), 1e-7);
        return this.lambda > HEAVY ? Math.max(gained, ENOUGH) : gained;
      }
      if (promised < ENOUGH) {
        this.failed++;
        // small promises under heavy damping say nothing
        return this.lambda > HEAVY && this.failed < MOST_FAILED ? ENOUGH : 0;
      }
      this.lambda = Math.max(6 * this.lambda, 1e-4);
    }
    this.failed++;
    // still promising, but the damping has to grow first
    return this.failed < MOST_FAILED ? ENOUGH : 0;
  }

  /** Laplace approximation of ln of the integral over the parameters. */
  get logEvidence(): number {
    if (!this.hessian) return Number.NEGATIVE_INFINITY;
    const n = this.z.length;
    const l = Float64Array.from(this.hessian);
    return choleskyFactor(l, n) ? -this.cost - 0.5 * logDeterminant(l, n) : -this.cost - 1e3;
  }

  /** Takes a better fit to the same data that was found elsewhere. */
  take(fit: Fit): void {
    if (!(fit.cost < this.cost)) return;
    this.z = fit.z;
    this.cost = fit.cost;
    this.hessian = fit.hessian;
    this.residuals = Float64Array.from(fit.residuals);
    this.jacobian = undefined;
  }

  asFit(): Fit {
    const n = this.z.length;
    const hessian = this.hessian ?? Float64Array.from({ length: n * n }, (_, i) => (i % (n + 1) === 0 ? 1 : 0));
    return { z: this.z, cost: this.cost, hessian, residuals: this.residuals, iterations: this.steps, gaveUp: false };
  }
}

/** f = 1/2 |r|^2 + 1/2 |z|^2. */
export function costOf(residuals: Float64Array, z: Float64Array): number {
  return 0.5 * (squaredNorm(residuals, 0, residuals.length) + squaredNorm(z, 0, z.length));
}

function squaredNorm(x: Float64Array, from: number, length: number): number {
  let s = 0;
  for (let k = from; k < from + length; k++) s += x[k]! * x[k]!;
  return s;
}

/** J'J + 1 over the rows from `from` to `to`. */
export function hessianOf(jacobian: Float64Array, n: number, m: number, from = 0, to = m): Float64Array {
  const h = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let s = i === j ? 1 : 0;
      for (let k = from; k < to; k++) s += jacobian[i * m + k]! * jacobian[j * m + k]!;
      h[i * n + j] = s;
      h[j * n + i] = s;
    }
  }
  return h;
}

/** J'r - z: the downhill direction of f. */
export function gradientOf(jacobian: Float64Array, residuals: Float64Array, z: Float64Array): Float64Array {
  const m = residuals.length;
  return z.map((value, j) => {
    let s = -value;
    for (let k = 0; k < m; k++) s += jacobian[j * m + k]! * residuals[k]!;
    return s;
  });
}

type Named = FollowedProblem['parameters'];
const nameOf = (p: Named[number]) => `${p.name}/${p.recording ?? 0}`;

function sameParameters(a: Named, b: Named): boolean {
  return a.length === b.length && a.every((p, i) => nameOf(p) === nameOf(b[i]!));
}

/** Values of z by name; what is new is 0. */
function carry(from: Named, z: Float64Array, to: Named): Float64Array {
  const known = new Map(from.map((p, i) => [nameOf(p), z[i]!]));
  return Float64Array.from(to, (p) => known.get(nameOf(p)) ?? 0);
}
