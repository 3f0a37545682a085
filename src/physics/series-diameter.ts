/** Holes one after the other. */

/**
 * One hole that passes what two holes one after the other pass.
 *
 * Valid: pressure drops small against absolute pressure (a few kPa), nothing stored between; either may be 0 (shut).
 * Source: quadratic losses add, 1/d^4 = 1/d1^4 + 1/d2^4; textbook.
 * @param firstDiameterM equivalent diameter of the first hole [m]
 * @param secondDiameterM equivalent diameter of the second hole [m]
 * @returns equivalent diameter of both, same discharge coefficient [m]
 */
export function seriesDiameter(firstDiameterM: number, secondDiameterM: number): number {
  if (firstDiameterM <= 0 || secondDiameterM <= 0) return 0;
  const ratio = firstDiameterM / secondDiameterM;
  return firstDiameterM / (1 + ratio ** 4) ** 0.25;
}
