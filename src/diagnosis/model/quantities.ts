/**
 * The physical quantities of the two-space model that the finding fits, as slots of one flat array.
 *
 * The two spaces are the tank's vapour space (with the filler neck) and the canister side (canister, vent
 * line, purge line). See `two-space.ts` for the equations.
 */
export const Q = {
  /** Gas volume of tank and neck at the first sample [m3]. */
  tankVolume: 0,
  /** Volume that behaves as gas on the canister side, carbon included [m3]. */
  canisterVolume: 1,
  /** Effective area (discharge coefficient times area) of the hole in the tank side to ambient [m2]. */
  leakArea: 2,
  /** Effective area of the vent path when the vent valve is commanded shut [m2]. */
  ventShutArea: 3,
  /** Effective area of the vent path when open [m2]. */
  ventOpenArea: 4,
  /** Effective area between tank and canister [m2]. */
  pipeArea: 5,
  /** Effective area of the purge valve at full duty [m2]. */
  purgeArea: 6,
  /** Effective area that the purge valve keeps when shut [m2]. */
  seepArea: 7,
  /** Fuel vapour pressure at the first sample [Pa]. */
  vapourPressure: 8,
  /** Evaporation conductance: mass-transfer coefficient times surface [m3/s]. */
  evaporation: 9,
  /** Vapour pressure minus partial pressure of vapour in the tank at the first sample [Pa]. */
  deficit: 10,
  /** Heat conductance between tank gas and wall [W/K]. */
  wallHeat: 11,
  /** Gauge vacuum at which the cap lets air in [Pa], positive. */
  reliefVacuum: 12,
  /** Gas volume that the carbon gives and takes slowly [m3], with its time constant [s]. */
  slowVolume: 13,
  slowTime: 14,
  /** Gauge pressure in both spaces at the first sample [Pa]. */
  initialGauge: 15,
  /** Sensor: zero error [Pa], gain [-], first-order lag [s]. */
  offset: 16,
  gain: 17,
  lag: 18,
  /** Shifts of up to four command changes from the middle of their sample gap [s]. */
  shift0: 19,
  shift1: 20,
  shift2: 21,
  shift3: 22,
  /** Rate of the fuel's temperature at up to five equally spaced knots [K/s]. */
  warm0: 23,
  warm1: 24,
  warm2: 25,
  warm3: 26,
  warm4: 27,
  /** Log multiplier of the purge flow at three knots of the draw [-]. */
  drift0: 28,
  drift1: 29,
  drift2: 30,
  /** Refuelling: multiplier of the displaced volume [-]. */
  displacement: 31,
  /** Effective area between tank and canister once the fill-limit valve has shut [m2]. */
  fullPipeArea: 32,
  /** Gauge pressure at which the cap lets gas out [Pa]. */
  reliefPressure: 33,
  /** Time in which the flow from the nozzle builds up, first order [s]. */
  nozzleRise: 34,
  /** Change of ambient pressure with time [Pa/s]. */
  ambientRate: 35,
  /** Flow through the cap's relief valves by pressure beyond their opening [mol/(s Pa)]. */
  reliefSlope: 36,
  /** Pressure drop of the open vent path up to which its bed and filter pass in proportion to it [Pa]. */
  ventLaminar: 37,
} as const;
export type QuantityName = keyof typeof Q;
export const QUANTITY_COUNT = 38;
export const SHIFT_SLOTS = 4;
export const DRIFT_SLOTS = 3;
