/** How much a line of thought needs a step of its own. */
import type { FollowedProblem } from './followed-problem.ts';
import type { Track } from './track.ts';

/**
 * A fit at rest that is this much worse than the best [ln] needs a step half as much; one that still moves may come much
 * further down.
 */
const HALF_PLAUSIBLE = 12;
const HALF_PROMISING = 100;
/** What a start that was never tried needs, and at most what one that still gains needs. */
const UNTRIED = 4;
/** Data grows by so much [s], or this share of the time since the last change, before the derivatives are old. */
const OLD_S = 4;
const OLD_SHARE = 0.12;
/** Every start gets a few steps, when nothing else is pressing; one that is worse than this [ln] not more than that. */
export const FAIR_STEPS = 4;
export const FAR = 300;
const FAIR_NEED = 0.55;
/** Less need than this is none. */
const LEAST = 0.5;

/**
 * @param lowest the best cost of any cause
 * @param fairSteps steps that a start gets before it is judged
 */
export function stepNeed(
  track: Track<FollowedProblem>,
  lowest: number,
  nowS: number,
  sinceChangeS: number,
  fairSteps = FAIR_STEPS,
): number {
  const gap = track.cost - lowest;
  const since = Number.isFinite(sinceChangeS) ? sinceChangeS : 0;
  const old = Math.min(UNTRIED, (nowS - track.steppedS) / (OLD_S + OLD_SHARE * since));
  const restless = track.steps === 0 ? UNTRIED : Math.min(UNTRIED, unrest(track, gap));
  // nobody is left out before the first step: without one there is no evidence
  const chances = gap > FAR ? FAIR_STEPS : fairSteps;
  const fair = track.steps === 0 ? 1 : track.steps < chances && !track.arrived ? FAIR_NEED : 0;
  const need = fair + restless * fading(gap, HALF_PROMISING) + old * fading(gap, HALF_PLAUSIBLE);
  return need < LEAST ? 0 : need;
}

/** What a further step may gain: what the last one gained, or what the best fit has taken of the new data better since. */
function unrest(track: Track<FollowedProblem>, gap: number): number {
  const fallenBehind = gap - track.gapThen;
  const moving = track.arrived ? 0 : 1 + track.gained;
  return Math.max(moving, fallenBehind > 0.5 ? 1 + fallenBehind : 0);
}

const fading = (gap: number, half: number) => 1 / (1 + (gap / half) ** 2);
