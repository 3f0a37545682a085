/** A valve that passes gas one way: opens over a range of forward pressure, keeps a small area when shut. */
import { smoothStep, smoothStepDerivative } from './smooth-step.ts';

/**
 * Effective area of a check valve at a pressure difference; smooth, never below the leak area.
 *
 * Valid: full opening above cracking pressure; quasi-static (no bounce of the disc).
 * Source: textbook behaviour; the shape of the opening is judgement.
 * @param forwardPressureDifferencePa pressure on the inlet side minus the outlet side [Pa]
 * @param crackingPressurePa difference at which it starts to open [Pa]
 * @param fullyOpenPressurePa difference at which it is fully open [Pa]
 * @param openAreaM2 effective area when fully open [m2]
 * @param shutAreaM2 effective area that leaks when shut, 0 for a tight seat [m2]
 * @returns effective area [m2]
 */
export function checkValveArea(
  forwardPressureDifferencePa: number,
  crackingPressurePa: number,
  fullyOpenPressurePa: number,
  openAreaM2: number,
  shutAreaM2: number,
): number {
  return (
    shutAreaM2 +
    (openAreaM2 - shutAreaM2) * smoothStep(forwardPressureDifferencePa, crackingPressurePa, fullyOpenPressurePa)
  );
}

/**
 * Derivative of checkValveArea by the forward pressure difference.
 *
 * Valid: as checkValveArea.
 * Source: differentiation.
 * @param forwardPressureDifferencePa pressure on the inlet side minus the outlet side [Pa]
 * @param crackingPressurePa difference at which it starts to open [Pa]
 * @param fullyOpenPressurePa difference at which it is fully open [Pa]
 * @param openAreaM2 effective area when fully open [m2]
 * @param shutAreaM2 effective area that leaks when shut [m2]
 * @returns derivative, not negative [m2/Pa]
 */
export function checkValveAreaDerivative(
  forwardPressureDifferencePa: number,
  crackingPressurePa: number,
  fullyOpenPressurePa: number,
  openAreaM2: number,
  shutAreaM2: number,
): number {
  return (
    (openAreaM2 - shutAreaM2) *
    smoothStepDerivative(forwardPressureDifferencePa, crackingPressurePa, fullyOpenPressurePa)
  );
}
