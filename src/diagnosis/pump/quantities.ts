/** Slots of the pump run's reduced model. See `model.ts` for the equations. */
export const P = {
  /** Gas volume of tank and neck [m3]; gas that canister, lines and module count for [m3]. */
  tankVolume: 0,
  canisterVolume: 1,
  /** Effective area of the hole to ambient [m2]. */
  leakArea: 2,
  /** What the purge valve keeps when shut, and passes at full duty [m2]; the engine stands, so beyond it is ambient. */
  seepArea: 3,
  purgeArea: 4,
  /** Vent path through filter and change-over valve, at rest and turned to the tank [m2]. */
  ventOpenArea: 5,
  ventShutArea: 6,
  /** Reference orifice, and what passes beside it when the valve is at rest [m2]. */
  orificeArea: 7,
  bypassArea: 8,
  /** Pump: flow without pressure difference [m3/s], pressure at which nothing flows [Pa], factor on both [-]. */
  freeFlow: 9,
  stall: 10,
  strength: 11,
  /** Bend of its characteristic [-] and change of its flow over the run, ln [-]. */
  bend: 12,
  drift: 13,
  /** Fuel vapour pressure at the start [Pa], its deficit in the gas [Pa], evaporation conductance [m3/s]. */
  vapourPressure: 14,
  deficit: 15,
  evaporation: 16,
  /** Gas to wall [W/K]; rate of the fuel's temperature [K/s]. */
  wallHeat: 17,
  warm: 18,
  /** Share of the tank's vapour that the carbon takes [-]; vapour share that the carbon gives to the pumped gas [-]. */
  uptake: 19,
  slip: 20,
  /** Gas that the carbon gives and takes slowly [m3], its time constant [s]. */
  slowVolume: 21,
  slowTime: 22,
  /** Gauge pressure at the first sample [Pa]. */
  initialGauge: 23,
  /** Module sensor: zero error [Pa], gain [-]; tank sensor likewise; lag of both [s]. */
  offset: 24,
  gain: 25,
  tankOffset: 26,
  tankGain: 27,
  lag: 28,
  /** 1: the change-over valve stays on the orifice whatever the command. */
  stuck: 29,
} as const;
export const PUMP_QUANTITIES = 30;
