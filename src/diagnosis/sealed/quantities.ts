/** Slots of the sealed tank's reduced model. See `model.ts` for the equations. */
export const S = {
  /** Gas volume of tank and neck [m3]; gas that canister and lines count for, carbon included [m3]. */
  tankVolume: 0,
  canisterVolume: 1,
  /** Effective area of the hole in the tank side, and in the canister side with the vent shut [m2]. */
  tankHole: 2,
  sideHole: 3,
  /** Isolation valve, open and shut [m2]. */
  isolationOpenArea: 4,
  isolationShutArea: 5,
  /** Vent path when open [m2]. */
  ventOpenArea: 6,
  /** Purge valve at full duty, and what it keeps when shut [m2]. */
  purgeArea: 7,
  seepArea: 8,
  /** Fuel vapour pressure at the start [Pa], its deficit in the gas [Pa], evaporation conductance [m3/s]. */
  vapourPressure: 9,
  deficit: 10,
  evaporation: 11,
  /** Gas to wall [W/K]; rate of fuel and wall beyond what was recorded [K/s]; share of the ambient's swing they follow [-]. */
  wallHeat: 12,
  warm: 13,
  follow: 14,
  /** Share of the vapour that slips past the carbon [-]; gas between tank and carbon [m3], its vapour logit [-]. */
  past: 15,
  headVolume: 16,
  headVapour: 17,
  /** Gas that the carbon gives and takes slowly [m3], its time constant [s]. */
  slowVolume: 18,
  slowTime: 19,
  /** What the tank's sensor reads at the first sample once it has settled [Pa gauge]; its errors tell the pressure. */
  initialReading: 20,
  /** Tank sensor: zero error [Pa], gain [-]; canister sensor likewise. */
  offset: 21,
  gain: 22,
  canisterOffset: 23,
  canisterGain: 24,
  /** 1: the isolation valve stays shut whatever the command. */
  stuckShut: 25,
  /** 1: the vent valve never shuts, whatever the command. */
  ventStays: 26,
  /** Lag of the tank's and the canister's sensor [s]; share of its pressure that a sensor shows at the first sample [-]. */
  lag: 27,
  canisterLag: 28,
  woken: 29,
  /** 1: the sensor shows its own level, whatever the pressure; that level [Pa gauge]. Tank, then canister. */
  frozen: 30,
  level: 31,
  canisterFrozen: 32,
  canisterLevel: 33,
  /** Resistance of the carbon bed before the vent path [Pa s/m3]. */
  bed: 34,
} as const;
export const SEALED_QUANTITIES = 35;

/** Gauge pressure of the tank at the first sample [Pa]. */
export const initialGauge = (q: ArrayLike<number>): number => (q[S.initialReading]! - q[S.offset]!) / q[S.gain]!;
