/** A solenoid valve driven by pulse width, such as a purge valve: its mean area over a period. */

/**
 * Share of the time that a pulse-width valve is open, after its opening and closing delays.
 *
 * Valid: 0 <= duty <= 1; delays shorter than a period; a duty of 0 or 1 has no edges and so no delays.
 * Source: textbook behaviour of a solenoid valve; a valve's own curve may differ.
 * @param duty commanded share of the period [-]
 * @param frequencyHz pulse frequency [Hz]
 * @param openDelayS time from energising to open [s]
 * @param closeDelayS time from release to shut [s]
 * @returns open share of the time, 0 to 1 [-]
 */
export function pulseValveOpenFraction(
  duty: number,
  frequencyHz: number,
  openDelayS: number,
  closeDelayS: number,
): number {
  if (duty <= 0) return 0;
  if (duty >= 1) return 1;
  // Too short a pulse never lifts the valve, so it adds no closing time either.
  if (duty <= openDelayS * frequencyHz) return 0;
  return Math.min(1, Math.max(0, duty + (closeDelayS - openDelayS) * frequencyHz));
}

/**
 * Mean effective area of a pulse-width valve; what leaks through when shut is always there.
 *
 * Valid: 0 <= open fraction <= 1; the pressures beside the valve change little within a period.
 * Source: time average of an area that is either open or shut.
 * @param openFraction share of the time that the valve is open [-]
 * @param openAreaM2 effective area when open [m2]
 * @param shutAreaM2 effective area that seeps when shut [m2]
 * @returns mean effective area [m2]
 */
export function pulseValveMeanArea(openFraction: number, openAreaM2: number, shutAreaM2: number): number {
  return shutAreaM2 + (openAreaM2 - shutAreaM2) * openFraction;
}

/**
 * Mean mass flow of a pulse-width valve from its flow when open and when shut.
 *
 * Valid: pressures constant over a period.
 * Source: time average.
 * @param openFraction share of the time that the valve is open [-]
 * @param openMassFlowKgPerS flow when open [kg/s]
 * @param shutMassFlowKgPerS flow that seeps when shut [kg/s]
 * @returns mean mass flow [kg/s]
 */
export function pulseValveMeanMassFlow(
  openFraction: number,
  openMassFlowKgPerS: number,
  shutMassFlowKgPerS: number,
): number {
  return openFraction * openMassFlowKgPerS + (1 - openFraction) * shutMassFlowKgPerS;
}
