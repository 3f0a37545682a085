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

export interface Weighing {
  readonly weighed: readonly Weighed[];
  /** Two faults at once; `causes` names both. */
  readonly pairs: readonly Weighed[];
  readonly recordings: readonly FitRecording[];
  readonly noise: readonly Noise[];
  readonly parameters: readonly Parameter[];
  readonly runs: number;
}
