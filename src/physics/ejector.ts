/** The ejector that sucks vapour while a boosted engine pushes air through it. */

/**
 * Pressure at the suction port of an ejector fed with boost air.
 *
 * Valid: boost 0 to about 120 kPa gauge; no boost, no suction.
 * Source: suction taken as a share of the boost, 2 to 10 kPa at 20 to 100 kPa of boost; from memory, judgement.
 * @param ambientAbsPa ambient absolute pressure [Pa]
 * @param boostGaugePa boost above ambient [Pa]
 * @param suctionPerBoost suction per boost, 0 when the nozzle is cracked or its feed hose off [-]
 * @returns absolute pressure at the suction port [Pa]
 */
export function ejectorSuctionAbsPa(ambientAbsPa: number, boostGaugePa: number, suctionPerBoost: number): number {
  return ambientAbsPa - suctionPerBoost * Math.max(0, boostGaugePa);
}
