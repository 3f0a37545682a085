/** The lines of thought about one cause of a pump run or a sealed hold, with the posteriors of its size. */
import type { Prior, SingleRunCause } from '../single-run/prior.ts';
import type { SingleRunProblem } from '../single-run/problem.ts';
import { type Grid, gridOver, logEvidenceOf } from '../single-run/weigh.ts';
import { Candidates } from './candidates.ts';
import { type Profile, profile } from './profile.ts';

/** A start is judged after so many steps: from another cause's car and day it takes some to come down. */
export const RUN_FAIR_STEPS = 9;

export class RunCandidates<Id extends string> extends Candidates<SingleRunProblem> {
  readonly cause: SingleRunCause<Id>;
  /** Posterior of what the evidence is integrated over, and of the hole to ambient, as of the last look. */
  keyGrid: Grid | undefined;
  holeGrid: Grid | undefined;
  /** Time of the last look [s], and whether the data are still those. */
  lookedS = Number.NEGATIVE_INFINITY;
  fresh = false;

  constructor(cause: SingleRunCause<Id>, problem: SingleRunProblem, starts: readonly Float64Array[]) {
    super(cause.key, problem, starts, RUN_FAIR_STEPS);
    this.cause = cause;
  }

  get form(): string {
    return this.cause.form ?? this.cause.id;
  }

  /**
   * Looks at evidence and size point by point, right after the best track has stepped.
   *
   * @param source whether another cause takes its evidence from the posterior of the key
   * @param sized whether a hole that is not the cause's own is worth one
   */
  look(nowS: number, source: boolean, sized: boolean): void {
    const { cause, best } = this;
    const priors = best.problem.parameters;
    const index = (name: string | undefined) => priors.findIndex((p) => p.name === name);
    const grid = (prior: Prior | undefined, p: Profile | undefined): Grid | undefined =>
      prior && p && { prior, z: p.z, logDensity: p.logDensity };
    this.integrate(source || cause.hole === cause.key);
    this.keyGrid = grid(priors[index(cause.key)], this.keyProfile);
    const hole = index(cause.hole);
    if (cause.hole === cause.key) this.holeGrid = this.keyGrid;
    else this.holeGrid = hole >= 0 && sized ? grid(priors[hole], profile(best, hole)) : undefined;
    this.lookedS = nowS;
    this.fresh = true;
  }

  /** The same by the integrals of a whole run; for when nothing more will come. */
  lookExactly(source: boolean, sized: boolean): void {
    const { cause } = this;
    const own = cause.hole === cause.key;
    const problem = this.best.problem;
    const over = (name: string | undefined): Grid | undefined => {
      const at = problem.parameters.findIndex((p) => p.name === name);
      if (at < 0 || !this.best.hessian) return undefined;
      const { grid, best } = gridOver(problem, this.best.asFit(), at);
      this.best.take(best);
      return grid;
    };
    const loose = this.looseIn(cause.key);
    const key = source || own || loose ? over(cause.key) : undefined;
    this.keyGrid = key;
    this.concluded = key ? logEvidenceOf(key) : this.best.logEvidence;
    this.holeGrid = own ? key : sized ? over(cause.hole) : undefined;
  }
}
