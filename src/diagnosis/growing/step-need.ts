/** How much a line of thought needs a step of its own. */
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
/** Less need than this is none. */
const LEAST = 0.5;

/** @param lowest the best cost of any cause */
export function stepNeed(track: Track, lowest: number, nowS: number, sinceChangeS: number): number {
  const gap = track.cost - lowest;
  const since = Number.isFinite(sinceChangeS) ? sinceChangeS : 0;
  const old = Math.min(UNTRIED, (nowS - track.steppedS) / (OLD_S + OLD_SHARE * since));
  const restless = track.steps === 0 ? UNTRIED : track.arrived ? 0 : 1 + Math.min(UNTRIED - 1, track.gained);
  // nobody is left out before the first step: without one there is no evidence
  const first = track.steps === 0 ? 1 : 0;
  const need = first + restless * fading(gap, HALF_PROMISING) + old * fading(gap, HALF_PLAUSIBLE);
  return need < LEAST ? 0 : need;
}

const fading = (gap: number, half: number) => 1 / (1 + (gap / half) ** 2);
