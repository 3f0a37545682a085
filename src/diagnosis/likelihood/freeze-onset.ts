/** Readings that stop moving half-way and stay so: a sensor that froze during the recording. */

/** Frozen readings move by less than this beyond one step [Pa]; for so many samples and so large a share. Judgement. */
export const STILL_PA = 0.5;
export const FROZEN_SHARE = 0.3;
export const FEWEST_FROZEN = 40;

/**
 * Time from which the readings stand still to the end though they moved before [s]; undefined if they don't.
 *
 * @param p readings [Pa gauge]
 * @param stepPa converter step [Pa]
 */
export function freezeOnset(timeS: Float64Array, p: Float64Array, stepPa: number): number | undefined {
  const still = 1.01 * stepPa + STILL_PA;
  const last = p[p.length - 1]!;
  let i = p.length - 1;
  while (i > 0 && !(Math.abs(p[i - 1]! - last) > still)) i--;
  const frozen = p.length - i;
  return i > 2 && frozen >= FROZEN_SHARE * p.length && frozen >= FEWEST_FROZEN ? timeS[i] : undefined;
}
