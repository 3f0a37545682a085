/**
 * The parameters of a car's parts. Faults change these; layouts build a network from them. Diameters are equivalent
 * diameters: thin sharp-edged hole, discharge coefficient 0.61.
 */
export const LEAK_PLACES = [
  'cap',
  'neck',
  'fillerHose',
  'senderSeal',
  'tankTop',
  'vapourLine',
  'canister',
  'ventSide',
  'purgeLine',
] as const;
export type LeakPlace = (typeof LEAK_PLACES)[number];

export interface TankParameters {
  shellVolumeM3: number;
  neckVolumeM3: number;
  fillFraction: number;
  /** Fuel surface, m2. */
  surfaceAreaM2: number;
  /** Gas-film coefficient of evaporation at rest and while fuel falls in, m/s. */
  massTransferMPerS: number;
  massTransferFillingMPerS: number;
  gasToWallWPerK: number;
  gasToFuelWPerK: number;
  fuelToAmbientWPerK: number;
  shellHeatCapacityJPerK: number;
  reliefPressurePa: number;
  reliefVacuumPa: number;
  reliefSpanPa: number;
  reliefDiameterM: number;
}

export interface SaddleParameters {
  /** Share of the shell that the passive lobe holds. */
  passiveShare: number;
  /** Fill of the passive lobe; absent = as the active one. */
  passiveFillFraction?: number;
  weirHeightFraction: number;
  weirFlowM3PerS: number;
  crossoverDiameterM: number;
  transferFlowM3PerS: number;
  unusableFraction: number;
}

export interface FuelParameters {
  reidVapourPressurePa: number;
  ethanolVolumeFraction: number;
  densityKgPerM3: number;
  heatCapacityJPerKgK: number;
  vapourPressureFactor: number;
}

export interface TankVentParameters {
  fillLimitDiameterM: number;
  fillLimitShutFraction: number;
  fillLimitOpenFraction: number;
  fillLimitStuck?: 'open' | 'shut';
  rolloverDiameterM: number;
  lineDiameterM: number;
  lineVolumeM3: number;
}

export interface CanisterParameters {
  cells: number;
  /** Gas in the bed, m3. */
  gasVolumeM3: number;
  /** Ports, and the purge line up to its valve, m3. */
  headVolumeM3: number;
  carbonKg: number;
  /** Share of the carbon that still adsorbs. */
  activeFraction: number;
  /** Loading at the start as a share of saturation, tank end and vent end. */
  loadingTankEnd: number;
  loadingVentEnd: number;
  rateHz: number;
  heatCapacityJPerK: number;
  toAmbientWPerK: number;
  bedLengthM: number;
  bedAreaM2: number;
  grainDiameterM: number;
  voidFraction: number;
  /** Factor on the bed's resistance: liquid, crumbled grains. */
  resistanceFactor: number;
}

export interface PurgeParameters {
  openDiameterM: number;
  shutDiameterM: number;
  /** Area that stays open whatever the command, as a diameter. */
  stuckOpenDiameterM: number;
  frequencyHz: number;
  openDelayS: number;
  closeDelayS: number;
}

export interface VentParameters {
  valveOpenDiameterM: number;
  valveShutDiameterM: number;
  filterDiameterM: number;
  /** Hose between canister and vent valve, m3. */
  volumeM3: number;
}

export interface PumpParameters {
  freeFlowM3PerS: number;
  stallPa: number;
  orificeDiameterM: number;
  changeoverDiameterM: number;
  /** What the change-over valve passes when it should not. */
  changeoverShutDiameterM: number;
  moduleVolumeM3: number;
  /** The change-over valve stays on the orifice whatever the command. */
  changeoverSticks: boolean;
}

export interface IsolationParameters {
  openDiameterM: number;
  shutDiameterM: number;
  reliefPressurePa: number;
  reliefVacuumPa: number;
}

export interface BoostParameters {
  teeVolumeM3: number;
  checkDiameterM: number;
  checkCrackingPa: number;
  checkFullyOpenPa: number;
  manifoldCheckShutDiameterM: number;
  ejectorCheckShutDiameterM: number;
  ejectorCheckDiameterM: number;
  /** Suction per boost of the ejector. */
  ejectorSuctionPerBoost: number;
}

export interface FillerParameters {
  closure: 'capped' | 'capless';
  recovery: boolean;
  /** Free way from tank to the open filler, beside the nozzle, while no liquid seals it. */
  openDiameterM: number;
  airEntrainment: number;
  nozzleShutOffPa: number;
}

export interface SensorParameters {
  lagS: number;
  gain: number;
  offsetPa: number;
  noisePa: number;
  stuckFromS?: number;
  minGaugePa: number;
  maxGaugePa: number;
}

export interface ReadingParameters {
  levelGain: number;
  levelOffset: number;
  fuelTemperatureOffsetK: number;
  ambientTemperatureOffsetK: number;
}

export interface SystemParameters {
  tank: TankParameters;
  saddle: SaddleParameters;
  fuel: FuelParameters;
  tankVent: TankVentParameters;
  canister: CanisterParameters;
  purge: PurgeParameters;
  vent: VentParameters;
  pump: PumpParameters;
  isolation: IsolationParameters;
  boost: BoostParameters;
  filler: FillerParameters;
  sensor: SensorParameters;
  readings: ReadingParameters;
  leakDiametersM: Record<LeakPlace, number>;
}
