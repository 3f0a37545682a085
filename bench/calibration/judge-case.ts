/** Sizes the leak of one drawn recording as the finding does, and says where the truth lies in the posterior. */

import { SizeMixture } from '../../src/diagnosis/size.ts';
import { sizeContexts } from '../../src/diagnosis/size-contexts.ts';
import { fitOneCause } from '../../src/diagnosis/weighing/fit-one-cause.ts';
import { LEAK, simulateCase } from './simulate-case.ts';

export interface Judged {
  readonly index: number;
  readonly trueDiameterMm: number;
  /** Posterior probability of a smaller hole than the true one: uniform if the posterior is calibrated. */
  readonly below: number;
  readonly lo90: number;
  readonly hi90: number;
  readonly median: number;
  readonly targetReached: boolean;
  readonly rateHz: number;
  readonly stepPa: number;
  readonly slowPa: number;
  readonly estimatedSlowPa: number;
  readonly seconds: number;
}

export function judgeCase(seed: number, index: number): Judged {
  const start = performance.now();
  const c = simulateCase(seed, index);
  const { weighing, posterior } = fitOneCause(c.car, [c.prepared], LEAK);
  const mixture = new SizeMixture(sizeContexts(weighing, posterior, ['vacuum-draw']));
  const { median, lo90, hi90 } = mixture.interval();
  return {
    index,
    trueDiameterMm: c.trueDiameterMm,
    below: 1 - mixture.exceeds(c.trueDiameterMm),
    lo90,
    hi90,
    median,
    targetReached: c.targetReached,
    rateHz: c.day.rateHz,
    stepPa: c.day.stepPa,
    slowPa: c.day.slowPa,
    estimatedSlowPa: weighing.noise[0]!.slowPa,
    seconds: (performance.now() - start) / 1e3,
  };
}
