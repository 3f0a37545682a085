/** Slots of the pump run's reduced model. See `model.ts` for the equations. */
export const P = {
  /** Gas volume of tank and neck [m3]; gas that canister, lines and module count for [m3]. */
  tankVolume: 0,
  canisterVolume: 1,
  /** Effective area of the hole in the tank side to ambient [m2]. */
  leakArea: 2,
  /**
   * Holes on the canister side, at its two ends [m2]. Purge end: line, shell, the shut purge valve, behind which a standing
   * engine is ambient; what enters there passes the carbon. Vent end: hose, and the change-over valve's seat while turned.
   */
  purgeEndArea: 3,
  ventEndArea: 26,
  /** Purge valve at full duty [m2]. */
  purgeArea: 4,
  /** Vent path through filter and change-over valve at rest [m2]. */
  ventOpenArea: 5,
  /** Reference orifice with what passes beside it [m2]. */
  orificeArea: 6,
  /** Pump: flow without pressure difference [m3/s], pressure at which nothing flows [Pa], factor on both [-]. */
  freeFlow: 7,
  stall: 8,
  strength: 9,
  /** Bend of its characteristic [-] and change of its flow over the run, ln [-]. */
  bend: 10,
  drift: 11,
  /** Fuel vapour pressure at the start [Pa], its deficit in the gas [Pa], evaporation conductance [m3/s]. */
  vapourPressure: 12,
  deficit: 13,
  evaporation: 14,
  /** Gas to wall [W/K]; rate of the fuel's temperature [K/s]. */
  wallHeat: 15,
  warm: 16,
  /** Share of the vapour that slips past the carbon [-]; vapour share that the carbon gives to the pumped gas [-]. */
  past: 17,
  slip: 18,
  /** Gas between tank and carbon [m3]; its vapour at the start as a share of the tank's, as a logit [-]. */
  headVolume: 19,
  headVapour: 20,
  /** Drop over carbon bed and valve per pumped flow [Pa s/m3]. */
  bed: 21,
  /** Module sensor: zero error [Pa], gain [-]; tank sensor likewise. */
  offset: 22,
  gain: 23,
  tankOffset: 24,
  tankGain: 25,
  /** 1: the change-over valve stays on the orifice whatever the command. */
  stuck: 27,
  /** What is left of the way from tank to canister [m2]; 0 where it is free and both share their pressure. */
  pathArea: 28,
  /** Lag of the module's and the tank's sensor [s]. */
  lag: 29,
  tankLag: 30,
  /** 1: the sensor shows its own level, whatever the pressure; that level [Pa gauge]. Module, then tank. */
  frozen: 31,
  level: 32,
  tankFrozen: 33,
  tankLevel: 34,
  /** Vapour share of the gas that the vent end holds when the pump begins to draw from it [-]; time in which it clears [s]. */
  ventVapour: 35,
  clearing: 36,
} as const;
export const PUMP_QUANTITIES = 37;
