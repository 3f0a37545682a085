/** Causes with their fits and evidences: what the posterior is made of. */
import type { Cause } from '../causes/catalogue.ts';
import type { CauseId } from '../finding.ts';
import type { Fit } from '../fit/levenberg-marquardt.ts';
import type { Parameter } from '../fit/parameter.ts';
import type { FitProblem, FitRecording } from '../fit/problem.ts';
import type { Noise } from '../likelihood/noise.ts';

/** A fit with the problem that it solves. */
export interface Held {
  readonly problem: FitProblem;
  readonly fit: Fit;
}

export interface Weighed {
  readonly id: CauseId;
  readonly causes: readonly Cause[];
  readonly problem: FitProblem;
  readonly fit: Fit;
  /** ln evidence of pressure, trims and sensor together; constants common to all causes included alike. */
  readonly logEvidence: number;
  /** Parameter that carries the size of the hole to ambient under this cause. */
  readonly sizeIndex: number;
  readonly parts: { readonly pressure: number; readonly trims: number; readonly sensor: number };
}

export interface ApproximationCheck {
  readonly id: CauseId;
  /** Effective share of draws from the approximation, 0..1; near 1 where it is exact. */
  readonly effectiveShare: number;
  /** Whether the evidence is a sampler's, as some contender's approximation did not hold. */
  readonly sampled: boolean;
}

/** All recordings under one noise each, with the ln prior density of those. */
export interface UnderNoise {
  readonly recordings: readonly FitRecording[];
  readonly logPrior: number;
}

export interface Weighing {
  readonly weighed: readonly Weighed[];
  /** Two faults at once; `causes` names both. */
  readonly pairs: readonly Weighed[];
  /** Contending causes whose Gaussian approximation was checked, with the share of draws from it that counted. */
  readonly checks: readonly ApproximationCheck[];
  /** The recordings under the noises that a size is read with, the settled one first. */
  readonly sizing: readonly UnderNoise[];
  readonly noise: readonly Noise[];
  readonly parameters: readonly Parameter[];
  readonly runs: number;
}
