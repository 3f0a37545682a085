/**
 * The ends of a sensor's range, told from readings that stand there: its output is flat while the pressure goes on, and noise
 * that is added behind the limit keeps the readings from being one value.
 */
import type { Rails } from '../likelihood/found-rails.ts';
import type { ObservedChannel } from './observed-channel.ts';

/** No sensor of a tank or canister ends nearer to ambient than this [Pa], common practice, no source. */
const NEAREST_END_PA = 1000;
/** Readings at an end lie within so many standard deviations of each other, or this share of all that the channel shows. */
const BAND_SDS = 5;
const BAND_SHARE = 0.002;
/** They stand there at least so long [s], and this many times longer than in three such bands beside it. Judgement. */
const LEAST_S = 1;
const TIMES_LONGER = 4;

/**
 * Not for procedures that end on plateaus of their own, as a pump's.
 *
 * @param c a channel that begins at rest: where it stands before anything has moved it is no end
 * @returns its rails, those found among the samples first
 */
export function standingRails(c: ObservedChannel): Rails {
  return {
    low: Number.isFinite(c.rails.low) ? c.rails.low : -endOf(c, -1),
    high: Number.isFinite(c.rails.high) ? c.rails.high : endOf(c, 1),
  };
}

/** The upper end of the readings times `sign`; infinite where they do not stand at one. */
function endOf(c: ObservedChannel, sign: 1 | -1): number {
  const { timeS, gaugePa, whiteVariance } = c.observations;
  const n = timeS.length;
  let low = Number.POSITIVE_INFINITY;
  let end = Number.NEGATIVE_INFINITY;
  // the first bin holds the sensor's waking
  for (let i = 1; i < n; i++) {
    low = Math.min(low, sign * gaugePa[i]!);
    end = Math.max(end, sign * gaugePa[i]!);
  }
  if (end < NEAREST_END_PA) return Number.POSITIVE_INFINITY;
  let at = 0;
  let beside = 0;
  let sum = 0;
  let begun = false;
  for (let i = 1; i < n; i++) {
    const band = Math.max(BAND_SDS * Math.sqrt(whiteVariance[i]!), BAND_SHARE * (end - low));
    const below = end - sign * gaugePa[i]!;
    if (below > band) begun = true;
    if (!begun) continue;
    // at most two neighbours' distance: a lone bin does not stand for a gap
    const lasts = Math.min(timeS[i]! - timeS[i - 1]!, i + 1 < n ? timeS[i + 1]! - timeS[i]! : Number.POSITIVE_INFINITY);
    if (below <= band) {
      at += lasts;
      sum += lasts * sign * gaugePa[i]!;
    } else if (below <= 4 * band) beside += lasts;
  }
  return at >= LEAST_S && at > TIMES_LONGER * beside ? sum / at : Number.POSITIVE_INFINITY;
}
