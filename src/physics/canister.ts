/** Whole-canister figures: capacity, bed volumes, and how much passes once it fills. */

/** Coefficients of the breakthrough fit, mass in grams. */
export interface BreakthroughCoefficients {
  readonly a: number;
  readonly b1: number;
  readonly b0: number;
  readonly c2: number;
  readonly c1: number;
  readonly c0: number;
}

/** Three technologies, from early to late. Source: USEPA MOVES default data, movesdb 20241112. */
export const BREAKTHROUGH_COEFFICIENTS = {
  t0: { a: 1.25, b1: -1, b0: 85, c2: -0.25, c1: 0.2, c0: 70 },
  t1: { a: 1.15, b1: -1.21, b0: 187, c2: -0.071, c1: 3.12, c0: 20 },
  t2: { a: 1.9, b1: -1.34, b0: 115, c2: -0.125, c1: 2.7, c0: 23 },
} as const satisfies Record<string, BreakthroughCoefficients>;

/**
 * Mass vented by a canister after a cumulative mass of vapour has been led to it.
 *
 * Valid: 0 to about 250 g of vapour; a fit, not a mechanism.
 * Source: USEPA MOVES5, MultidayTankVaporVentingCalculator.sql.
 * @param coefficients of the canister technology, for grams [-]
 * @param vapourToCanisterKg cumulative vapour [kg]
 * @returns cumulative mass vented, at least 0 [kg]
 */
export function ventedMass(coefficients: BreakthroughCoefficients, vapourToCanisterKg: number): number {
  const x = vapourToCanisterKg * 1e3;
  const { a, b1, b0, c2, c1, c0 } = coefficients;
  const b = b1 * x + b0;
  const c = (c2 * x + c1) * x + c0;
  const grams = (-b + Math.sqrt(Math.max(0, b * b - 4 * a * c))) / (2 * a);
  return Math.max(0, grams) * 1e-3;
}

/**
 * Working capacity of a carbon bed.
 *
 * Valid: new carbon, fully purged as rated.
 * Source: ASTM D5228, capacity is rated per volume of carbon.
 * @param bedVolumeM3 volume of carbon [m3]
 * @param capacityKgPerM3 butane working capacity, 110 for 11 g/100 mL [kg/m3]
 * @returns mass held and given up again [kg]
 */
export function workingCapacity(bedVolumeM3: number, capacityKgPerM3: number): number {
  return bedVolumeM3 * capacityKgPerM3;
}

/**
 * Purge expressed in bed volumes, the measure by which to judge it.
 *
 * Valid: constant flow at about ambient pressure.
 * Source: definition.
 * @param volumeFlowM3PerS purge flow [m3/s]
 * @param durationS how long [s]
 * @param bedVolumeM3 volume of carbon [m3]
 * @returns bed volumes [-]
 */
export function bedVolumes(volumeFlowM3PerS: number, durationS: number, bedVolumeM3: number): number {
  return (volumeFlowM3PerS * durationS) / bedVolumeM3;
}

/**
 * Time to purge a given number of bed volumes: inverse of bedVolumes.
 *
 * Valid: constant flow > 0.
 * Source: definition.
 * @param volumes bed volumes wanted [-]
 * @param volumeFlowM3PerS purge flow [m3/s]
 * @param bedVolumeM3 volume of carbon [m3]
 * @returns duration [s]
 */
export function purgeDuration(volumes: number, volumeFlowM3PerS: number, bedVolumeM3: number): number {
  return (volumes * bedVolumeM3) / volumeFlowM3PerS;
}
