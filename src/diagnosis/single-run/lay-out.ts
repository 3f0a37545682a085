/** How a run is laid out for its model. */
import { type ObserveChannel, observeChannel } from './observed-channel.ts';

export interface LayOut {
  /** Where the observations come from. */
  readonly observe: ObserveChannel;
  /** How much longer than usual the model's steps may be, once a command is some seconds old [-]. */
  readonly coarser: number;
}

export const WHOLE_RECORDING: LayOut = { observe: observeChannel, coarser: 1 };

/** Steps this long after a command [s] may be coarser. Judgement. */
const SETTLED_S = 2;

export const coarserSteps =
  (longestS: (sinceS: number) => number, coarser: number) =>
  (sinceS: number): number =>
    longestS(sinceS) * (sinceS > SETTLED_S ? coarser : 1);
