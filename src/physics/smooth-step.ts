/** The opening curve shared by parts that open over a range of pressure or level. */

/**
 * Smooth step: 0 below the start, 1 above the end, a cubic with flat ends between.
 *
 * Valid: end > start.
 * Source: cubic Hermite interpolation; its use for a valve's lift is judgement.
 * @param value where to evaluate [-]
 * @param start value at which the step leaves 0, in the unit of value [-]
 * @param end value at which the step reaches 1, in the unit of value [-]
 * @returns fraction from 0 to 1 [-]
 */
export function smoothStep(value: number, start: number, end: number): number {
  const u = (value - start) / (end - start);
  if (u <= 0) return 0;
  if (u >= 1) return 1;
  return u * u * (3 - 2 * u);
}

/**
 * Derivative of smoothStep by its value.
 *
 * Valid: end > start.
 * Source: differentiation of the cubic.
 * @param value where to evaluate [-]
 * @param start value at which the step leaves 0, in the unit of value [-]
 * @param end value at which the step reaches 1, in the unit of value [-]
 * @returns slope, in one over the unit of value [-]
 */
export function smoothStepDerivative(value: number, start: number, end: number): number {
  const span = end - start;
  const u = (value - start) / span;
  if (u <= 0 || u >= 1) return 0;
  return (6 * u * (1 - u)) / span;
}
