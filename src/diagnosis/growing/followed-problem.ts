/** What a line of thought needs of the fit that it follows, whatever the model behind it. */
import type { LeastSquares } from '../fit/levenberg-marquardt.ts';

export interface FollowedProblem extends LeastSquares {
  readonly parameters: readonly { readonly name: string; readonly recording?: number }[];
  /** Runs of the model so far. */
  readonly runs: number;
}
