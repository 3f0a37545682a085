/** The ambient temperature profile of a diurnal day, 72 to 96 degF over 24 hours. */
import { RANKINE_AT_ZERO_FAHRENHEIT } from '../units/exact-factors.ts';

/**
 * Temperature at each full hour [degF].
 * Source: 40 CFR 86 Appendix II; the full table is from memory, only the three 24 h cycles and the soak are confirmed.
 */
export const DIURNAL_PROFILE_F: readonly number[] = [
  72.0, 72.5, 75.5, 80.3, 85.2, 89.4, 93.1, 95.1, 95.8, 96.0, 95.5, 94.1, 91.7, 88.6, 85.5, 82.8, 80.9, 79.0, 77.2,
  75.8, 74.7, 73.9, 73.3, 72.6, 72.0,
];

/**
 * Ambient temperature of the diurnal day at a time, linear between hours and repeating each day.
 *
 * Valid: any time; negative times count back from the start of a day.
 * Source: 40 CFR 86 Appendix II; table from memory.
 * @param timeS time since the start of the profile [s]
 * @returns ambient temperature [K]
 */
export function diurnalTemperature(timeS: number): number {
  const hours = timeS / 3600 - 24 * Math.floor(timeS / 86400);
  const hour = Math.min(23, Math.floor(hours));
  const before = DIURNAL_PROFILE_F[hour] as number;
  const after = DIURNAL_PROFILE_F[hour + 1] as number;
  return (before + (hours - hour) * (after - before) + RANKINE_AT_ZERO_FAHRENHEIT) / 1.8;
}

/**
 * A diurnal day of the same shape between other extremes.
 *
 * Valid: lowest < highest.
 * Source: the profile scaled; judgement for days other than 72 to 96 degF.
 * @param timeS time since the start of the profile [s]
 * @param lowestK lowest temperature of the day [K]
 * @param highestK highest temperature of the day [K]
 * @returns ambient temperature [K]
 */
export function scaledDiurnalTemperature(timeS: number, lowestK: number, highestK: number): number {
  const lowF = Math.min(...DIURNAL_PROFILE_F);
  const highF = Math.max(...DIURNAL_PROFILE_F);
  const share = (diurnalTemperature(timeS) * 1.8 - RANKINE_AT_ZERO_FAHRENHEIT - lowF) / (highF - lowF);
  return lowestK + share * (highestK - lowestK);
}
