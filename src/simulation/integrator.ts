import { combine } from './combine.ts';
import type { OdeSystem } from './ode-system.ts';
import { RODASP, type RosenbrockTableau } from './rosenbrock-tableaus.ts';
import { factorLu, type LuPlan, planLu, solveLu } from './sparse-lu.ts';
import {
  growth,
  type IntegratorOptions,
  MAX_STEPS_DEFAULT,
  STEP_FLOOR,
  type StepFailure,
  shrink,
} from './step-control.ts';

/**
 * Rosenbrock integrator with embedded error control. All work arrays are made once; a step allocates nothing.
 * `x` is the state at `timeS`; after `step` the last step can be interpolated with `interpolate`.
 */
export class Integrator {
  readonly system: OdeSystem;
  readonly x: Float64Array;
  timeS = 0;
  /** Step proposed for the next attempt, s. */
  stepS = 0;
  accepted = 0;
  rejected = 0;
  /** Start and length of the last accepted step. */
  lastStartS = 0;
  lastStepS = 0;
  failure: StepFailure | undefined;

  private readonly tableau: RosenbrockTableau;
  private readonly options: IntegratorOptions;
  private readonly plan: LuPlan;
  private readonly n: number;
  private readonly xOld: Float64Array;
  private readonly xStage: Float64Array;
  private readonly f: Float64Array;
  private readonly f0: Float64Array;
  private readonly dfdt: Float64Array;
  private readonly jacobian: Float64Array;
  private readonly w: Float64Array;
  private readonly u: readonly Float64Array[];
  private readonly zero: Float64Array;
  private readonly quadratureColumns: Int32Array;
  private readonly quadratureStart: Int32Array;
  private readonly estimate: Float64Array;
  private readonly dense2: Float64Array;
  private readonly dense3: Float64Array;
  private denseReady = false;
  private f0Valid = false;
  private jacobianValid = false;
  private timeDependent = false;
  private errorOld = 1;
  private stepOld = 0;
  private rejectedLast = false;
  private worst = 0;

  constructor(system: OdeSystem, options: IntegratorOptions, plan?: LuPlan) {
    const n = system.size;
    const m = system.dynamicSize;
    const pattern = system.pattern ?? new Uint8Array(n * n).fill(1);
    this.system = system;
    this.options = options;
    this.tableau = options.tableau ?? RODASP;
    this.plan = plan ?? planLu(m, pattern, n);
    this.n = n;
    this.x = new Float64Array(n);
    this.xOld = new Float64Array(n);
    this.xStage = new Float64Array(n);
    this.f = new Float64Array(n);
    this.f0 = new Float64Array(n);
    this.dfdt = new Float64Array(n);
    this.jacobian = new Float64Array(n * n);
    this.w = new Float64Array(n * n);
    this.u = Array.from({ length: this.tableau.stages }, () => new Float64Array(n));
    this.zero = new Float64Array(n);
    this.estimate = new Float64Array(n);
    this.dense2 = new Float64Array(n);
    this.dense3 = new Float64Array(n);
    const columns: number[] = [];
    this.quadratureStart = new Int32Array(n - m + 1);
    for (let i = m; i < n; i++) {
      for (let j = 0; j < m; j++) if (pattern[i * n + j]) columns.push(j);
      this.quadratureStart[i - m + 1] = columns.length;
    }
    this.quadratureColumns = Int32Array.from(columns);
  }

  /** Starts at `timeS` from `x0`; `firstStepS` is a guess, the error control corrects it. */
  start(timeS: number, x0: Float64Array, firstStepS: number): void {
    this.x.set(x0);
    this.timeS = timeS;
    this.accepted = 0;
    this.rejected = 0;
    this.failure = undefined;
    this.discontinuity(firstStepS);
  }

  /** Tells that equations or state have jumped here: what was known of the slope and the step is dropped. */
  discontinuity(firstStepS: number): void {
    this.f0Valid = false;
    this.jacobianValid = false;
    this.stepS = firstStepS;
    this.stepOld = 0;
    this.rejectedLast = false;
  }

  /**
   * Makes one accepted step that does not go beyond `endS` (and lands on it exactly when near).
   * Returns false on failure, with the cause in `failure`.
   */
  step(endS: number): boolean {
    const { system, options } = this;
    const maxSteps = options.maxSteps ?? MAX_STEPS_DEFAULT;
    const order = this.tableau.order;
    let h = options.fixedStepS ?? this.stepS;
    if (options.maxStepS !== undefined && h > options.maxStepS) h = options.maxStepS;
    if (!this.f0Valid) {
      system.beginStep?.(this.timeS, this.x);
      system.derivative(this.timeS, this.x, this.f0);
      this.f0Valid = true;
      this.jacobianValid = false;
    }
    if (!this.jacobianValid) {
      this.jacobian.fill(0);
      system.jacobian(this.timeS, this.x, this.jacobian);
      this.timeDependent = system.timeDerivative(this.timeS, this.x, this.dfdt);
      this.jacobianValid = true;
    }
    for (;;) {
      if (this.accepted + this.rejected >= maxSteps) {
        this.failure = { reason: 'too-many-steps', component: this.worst };
        return false;
      }
      const left = endS - this.timeS;
      const tiny = STEP_FLOOR * Math.max(1, Math.abs(this.timeS));
      let landing = false;
      const wanted = h;
      if (h >= left * (1 - 1e-9)) {
        h = left;
        landing = true;
      } else if (options.fixedStepS === undefined && h > 0.6 * left) {
        h = 0.5 * left; // two even steps rather than one full and one sliver
      }
      if (h < tiny && !landing) {
        this.failure = { reason: 'step-too-small', component: this.worst };
        return false;
      }
      const error = this.tryStep(h);
      if (options.fixedStepS !== undefined || error <= 1) {
        if (!(error < Number.POSITIVE_INFINITY)) {
          this.failure = { reason: 'not-finite', component: this.worst };
          return false;
        }
        // Accepted: the new state is in xStage; the old one is kept for the dense output.
        this.xOld.set(this.x);
        this.x.set(this.xStage);
        this.lastStartS = this.timeS;
        this.lastStepS = h;
        this.timeS = landing ? endS : this.timeS + h;
        const previousS = this.accepted > 0 ? this.stepOld : 0;
        const factor = growth(error, this.errorOld, h, previousS, order);
        let next = h * factor;
        if (this.rejectedLast && next > h) next = h;
        // A step cut short to land on a stop says nothing against the longer one wanted before.
        if (landing && next < wanted) next = wanted;
        this.rejectedLast = false;
        this.errorOld = error;
        this.stepOld = h;
        this.stepS = next;
        this.accepted++;
        this.denseReady = false;
        this.f0Valid = false;
        this.jacobianValid = false;
        return true;
      }
      this.rejected++;
      this.rejectedLast = true;
      if (error === Number.POSITIVE_INFINITY) h *= 0.1;
      else h *= shrink(error, order);
      if (h < tiny) {
        this.failure = { reason: Number.isFinite(error) ? 'step-too-small' : 'not-finite', component: this.worst };
        return false;
      }
    }
  }

  /** State at `timeS` inside the last accepted step, into `out`. */
  interpolate(timeS: number, out: Float64Array): void {
    const { n, x, xOld, tableau } = this;
    const h = this.lastStepS;
    const s = (timeS - this.lastStartS) / h;
    const rest = 1 - s;
    const dense = tableau.dense;
    if (dense === undefined) {
      // Quadratic through both ends with the slope at the start (f0 still holds it): keeps linear invariants.
      for (let i = 0; i < n; i++) {
        const a = xOld[i]!;
        const b = x[i]!;
        out[i] = a + s * (b - a) + s * rest * (this.f0[i]! * h - (b - a));
      }
      return;
    }
    if (!this.denseReady) this.prepareDense(dense[0], dense[1]);
    const { dense2, dense3 } = this;
    for (let i = 0; i < n; i++) {
      out[i] = xOld[i]! * rest + s * (x[i]! + rest * (dense2[i]! + s * dense3[i]!));
    }
  }

  /** The vectors of the dense output, once per step that is looked into. */
  private prepareDense(d2: Float64Array, d3: Float64Array): void {
    const { u, dense2, dense3, tableau } = this;
    combine(dense2, this.zero, 1, d2, 0, tableau.stages, u);
    combine(dense3, this.zero, 1, d3, 0, tableau.stages, u);
    this.denseReady = true;
  }

  /** Takes the last accepted step back to try it again shorter, for landing on an event. */
  undo(): void {
    this.x.set(this.xOld);
    this.timeS = this.lastStartS;
    this.f0Valid = false;
    this.jacobianValid = false;
    this.accepted--;
  }

  /** One attempt of length h from the present state: result in xStage, scaled error returned (Infinity = no use). */
  private tryStep(h: number): number {
    const { system, n, x, xStage, f, f0, dfdt, u, w, jacobian, tableau, plan } = this;
    const { stages, a, c, alpha, d, m, e, freshEvaluation } = tableau;
    const dyn = system.dynamicSize;
    const inverse = 1 / (tableau.gamma * h);
    const entries = plan.entries;
    for (let k = 0; k < entries.length; k++) {
      const address = entries[k]!;
      w[address] = -jacobian[address]!;
    }
    for (let i = 0; i < dyn; i++) w[i * n + i] = w[i * n + i]! + inverse;
    const bad = factorLu(plan, w, n);
    if (bad >= 0) {
      this.worst = bad;
      return Number.POSITIVE_INFINITY;
    }
    const gammaH = 1 / inverse;
    let rates = f0;
    for (let s = 0; s < stages; s++) {
      const row = s * stages;
      const us = u[s]!;
      if (s > 0 && freshEvaluation[s]) {
        combine(xStage, x, 1, a, row, s, u);
        system.derivative(this.timeS + alpha[s]! * h, xStage, f);
        rates = f;
      }
      combine(us, rates, 1 / h, c, row, s, u);
      if (this.timeDependent && d[s] !== 0) {
        const hd = h * d[s]!;
        for (let i = 0; i < n; i++) us[i] = us[i]! + hd * dfdt[i]!;
      }
      solveLu(plan, w, n, us);
      for (let q = dyn; q < n; q++) {
        let sum = us[q]!;
        const to = this.quadratureStart[q - dyn + 1]!;
        for (let k = this.quadratureStart[q - dyn]!; k < to; k++) {
          const j = this.quadratureColumns[k]!;
          sum += jacobian[q * n + j]! * us[j]!;
        }
        us[q] = sum * gammaH;
      }
    }
    combine(xStage, x, 1, m, 0, stages, u);
    return this.scaledError(e);
  }

  private scaledError(e: Float64Array): number {
    const { x, xStage, u, tableau, options, estimate } = this;
    const dyn = this.system.dynamicSize;
    const stages = tableau.stages;
    const atol = options.absoluteTolerance;
    const rtol = options.relativeTolerance;
    combine(estimate, this.zero, 1, e, 0, stages, u);
    let sum = 0;
    let largest = -1;
    for (let i = 0; i < dyn; i++) {
      const scale = atol[i]! + rtol * Math.max(Math.abs(x[i]!), Math.abs(xStage[i]!));
      const ratio = Math.abs(estimate[i]! / scale);
      if (!(ratio <= Number.MAX_VALUE)) {
        this.worst = i;
        return Number.POSITIVE_INFINITY;
      }
      if (ratio > largest) {
        largest = ratio;
        this.worst = i;
      }
      sum += ratio * ratio;
    }
    return dyn === 0 ? 0 : Math.sqrt(sum / dyn);
  }
}
