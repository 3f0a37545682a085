/** A relief valve in both directions, as in a filler cap: tight within its band, opens smoothly beyond it. */
import { smoothStep, smoothStepDerivative } from './smooth-step.ts';

/**
 * Effective area of a two-way relief valve at the gauge pressure inside.
 *
 * Valid: vacuum setting >= 0, pressure setting >= 0, opening span > 0; quasi-static, no hysteresis.
 * Source: textbook behaviour; the shape of the opening is judgement.
 * @param insideGaugePa pressure inside less ambient [Pa]
 * @param pressureSettingPa gauge pressure at which it starts to relieve outward [Pa]
 * @param vacuumSettingPa vacuum, as a positive number, at which it starts to relieve inward [Pa]
 * @param openingSpanPa further pressure until it is fully open [Pa]
 * @param openAreaM2 effective area when fully open [m2]
 * @param shutAreaM2 effective area that leaks within the band [m2]
 * @returns effective area [m2]
 */
export function reliefValveArea(
  insideGaugePa: number,
  pressureSettingPa: number,
  vacuumSettingPa: number,
  openingSpanPa: number,
  openAreaM2: number,
  shutAreaM2: number,
): number {
  const setting = insideGaugePa >= 0 ? pressureSettingPa : vacuumSettingPa;
  return shutAreaM2 + (openAreaM2 - shutAreaM2) * smoothStep(Math.abs(insideGaugePa), setting, setting + openingSpanPa);
}

/**
 * Derivative of reliefValveArea by the gauge pressure inside.
 *
 * Valid: as reliefValveArea.
 * Source: differentiation.
 * @param insideGaugePa pressure inside less ambient [Pa]
 * @param pressureSettingPa gauge pressure at which it starts to relieve outward [Pa]
 * @param vacuumSettingPa vacuum, as a positive number, at which it starts to relieve inward [Pa]
 * @param openingSpanPa further pressure until it is fully open [Pa]
 * @param openAreaM2 effective area when fully open [m2]
 * @param shutAreaM2 effective area that leaks within the band [m2]
 * @returns derivative; negative on the vacuum side [m2/Pa]
 */
export function reliefValveAreaDerivative(
  insideGaugePa: number,
  pressureSettingPa: number,
  vacuumSettingPa: number,
  openingSpanPa: number,
  openAreaM2: number,
  shutAreaM2: number,
): number {
  const outward = insideGaugePa >= 0;
  const setting = outward ? pressureSettingPa : vacuumSettingPa;
  const slope =
    (openAreaM2 - shutAreaM2) * smoothStepDerivative(Math.abs(insideGaugePa), setting, setting + openingSpanPa);
  return outward ? slope : -slope;
}
