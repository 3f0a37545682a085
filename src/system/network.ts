/**
 * A vapour system as plain data: spaces that hold gas, passages between two spaces, liquid ways between two tanks,
 * sensors, and the boundaries of the car. What a part is called and how it fails stands in the parts catalogue.
 */
import type { LayoutId } from './car.ts';
import type { PartId } from './parts.ts';

/** A quantity from outside, given over time by the conditions of a scenario. */
export const INPUTS = [
  'ambientAbsPa',
  'ambientTemperatureK',
  'manifoldAbsPa',
  'ejectorAbsPa',
  'fillFlowM3PerS',
  'fillTemperatureK',
  'fuelDrawM3PerS',
  'fuelHeatW',
] as const;
export type InputId = (typeof INPUTS)[number];

/** Something commanded or done during a procedure, 0 to 1; all 0 is the car at rest with its cap on. */
export const COMMANDS = [
  'purgeDuty',
  'ventClosed',
  'isolationOpen',
  'pumpOn',
  'changeoverToTank',
  'fillerOpen',
  'nozzleOn',
  'fillLimitShut',
  'enginePumpOn',
] as const;
export type CommandId = (typeof COMMANDS)[number];

/** What the commands mean in words. */
export const COMMAND_WORDS: Readonly<Record<CommandId, string>> = {
  purgeDuty: 'purge valve, share of the time open',
  ventClosed: 'vent valve sealing',
  isolationOpen: 'tank isolation valve open',
  pumpOn: 'leak-check pump running',
  changeoverToTank: 'change-over valve turned to the tank',
  fillerOpen: 'free gas way at the filler: cap off and no liquid seal',
  nozzleOn: 'fuel going in',
  fillLimitShut: 'fill-limit valve floated shut',
  enginePumpOn: "engine's fuel pump running",
};

/** Gas at the ambient temperature. */
export interface GasSpace {
  readonly kind: 'gas';
  readonly id: string;
  readonly part: PartId;
  readonly volumeM3: number;
}

/** A tank or a lobe of one: gas over fuel, each with its temperature. */
export interface TankSpace {
  readonly kind: 'tank';
  readonly id: string;
  readonly part: PartId;
  /** Room for fuel and gas, m3. */
  readonly shellVolumeM3: number;
  /** Gas above and beside the shell that fuel does not reach, m3. */
  readonly neckVolumeM3: number;
  /** Share of the shell filled with fuel at the start, 0 to 1. */
  readonly fillFraction: number;
  readonly fuel: FuelProperties;
  readonly surfaceAreaM2: number;
  /** Gas-film coefficient of evaporation at rest and while fuel falls in, m/s. */
  readonly massTransferMPerS: number;
  readonly massTransferFillingMPerS: number;
  /** Gas to wall (wall at ambient), W/K. */
  readonly gasToWallWPerK: number;
  /** Gas to fuel surface, W/K. */
  readonly gasToFuelWPerK: number;
  /** Fuel to ambient, W/K. */
  readonly fuelToAmbientWPerK: number;
  /** Shell that warms with the fuel, J/K. */
  readonly shellHeatCapacityJPerK: number;
}

export interface FuelProperties {
  /** Reid vapour pressure of the hydrocarbon part and ethanol together, Pa. */
  readonly reidVapourPressurePa: number;
  readonly ethanolVolumeFraction: number;
  readonly densityKgPerM3: number;
  readonly heatCapacityJPerKgK: number;
  /** Molar mass of the vapour, kg/mol. */
  readonly vapourMolarMassKgPerMol: number;
  /** Factor on the vapour pressure from the tables: what the seasonal fuel differs by. */
  readonly vapourPressureFactor: number;
}

/** One cell of the carbon bed. */
export interface BedSpace {
  readonly kind: 'bed';
  readonly id: string;
  readonly part: PartId;
  /** Gas between and within the grains, m3. */
  readonly volumeM3: number;
  /** Carbon that still adsorbs, kg. */
  readonly carbonKg: number;
  /** Carbon and shell for heat, J/K. */
  readonly heatCapacityJPerK: number;
  readonly toAmbientWPerK: number;
  /** Linear-driving-force rate, 1/s. */
  readonly rateHz: number;
  /** Loading at the start as a share of what this cell would hold at saturation, 0 to 1. */
  readonly loadingFraction: number;
}

export const BOUNDARIES = ['ambient', 'manifold', 'ejector'] as const;
export type BoundaryId = (typeof BOUNDARIES)[number];

export type Space = GasSpace | TankSpace | BedSpace;
export type SpaceId = string;

interface PassageBase {
  readonly id: string;
  readonly part: PartId;
  readonly from: SpaceId | BoundaryId;
  readonly to: SpaceId | BoundaryId;
}

/** How a command opens a passage: `open` = area follows the command, `shut` = area falls with the command. */
export interface Actuation {
  readonly command: CommandId;
  readonly opens: boolean;
}

/** A hole or valve: effective area (discharge coefficient times bore area), by command between shut and open. */
export interface OrificePassage extends PassageBase {
  readonly kind: 'orifice';
  readonly openAreaM2: number;
  readonly shutAreaM2: number;
  readonly actuation?: Actuation;
  /** Pulse-width drive of the actuating command. */
  readonly pulse?: { readonly frequencyHz: number; readonly openDelayS: number; readonly closeDelayS: number };
}

export interface BedPassage extends PassageBase {
  readonly kind: 'bed';
  readonly linearPaSPerKg: number;
  readonly quadraticPaS2PerKg2: number;
}

/** Lets gas go from `from` to `to`. */
export interface CheckPassage extends PassageBase {
  readonly kind: 'check';
  readonly crackingPa: number;
  readonly fullyOpenPa: number;
  readonly openAreaM2: number;
  readonly shutAreaM2: number;
}

/** Two-way relief between a space (`from`) and ambient (`to`). */
export interface ReliefPassage extends PassageBase {
  readonly kind: 'relief';
  readonly pressureSettingPa: number;
  readonly vacuumSettingPa: number;
  readonly openingSpanPa: number;
  readonly openAreaM2: number;
  readonly shutAreaM2: number;
}

/** A small pump that moves gas from `from` to `to`; flow falls in a straight line to nothing at stall. */
export interface PumpPassage extends PassageBase {
  readonly kind: 'pump';
  readonly freeFlowM3PerS: number;
  readonly stallPa: number;
  readonly command: CommandId;
}

export type Passage = OrificePassage | BedPassage | CheckPassage | ReliefPassage | PumpPassage;

/** Fuel that runs over the weir from a fuller lobe, both ways. */
export interface Weir {
  readonly between: readonly [SpaceId, SpaceId];
  /** Height of the weir as a share of the lobe's volume. */
  readonly heightFraction: number;
  /** Flow per share of a lobe's volume above the weir, m3/s. */
  readonly flowM3PerS: number;
}

/** Jet pump that lifts fuel from the passive to the active lobe while the engine's pump runs. */
export interface TransferPump {
  readonly from: SpaceId;
  readonly to: SpaceId;
  readonly flowM3PerS: number;
  /** Share of the lobe's volume that cannot be sucked up. */
  readonly unusableFraction: number;
  readonly command: CommandId;
}

/** Pressure sensor with a lag; what the module makes of it is worked out when samples are taken. */
export interface PressureSensor {
  readonly id: 'tankPressure' | 'canisterPressure' | 'pumpPressure';
  readonly part: PartId;
  readonly space: SpaceId;
  readonly lagS: number;
  readonly gain: number;
  readonly offsetPa: number;
  readonly noisePa: number;
  /** Stuck at the value of this moment of the procedure; absent = not stuck. */
  readonly stuckFromS?: number;
  readonly minGaugePa: number;
  readonly maxGaugePa: number;
}

/** Errors of what the module reads beside pressure. */
export interface ReadingErrors {
  readonly levelGain: number;
  readonly levelOffset: number;
  readonly fuelTemperatureOffsetK: number;
  readonly ambientTemperatureOffsetK: number;
}

export interface Network {
  readonly layout: LayoutId;
  readonly spaces: readonly Space[];
  readonly passages: readonly Passage[];
  readonly weirs: readonly Weir[];
  readonly transferPumps: readonly TransferPump[];
  /** Where the nozzle's fuel arrives and the engine's fuel leaves. */
  readonly fillSpace: SpaceId;
  readonly drawSpace: SpaceId;
  /** Air carried into the filler by the jet, volume per volume of fuel. */
  readonly airEntrainment: number;
  /** Fill fraction at which the fill-limit valve floats shut, and falls open again. */
  readonly fillLimit: {
    readonly shutFraction: number;
    readonly openFraction: number;
    readonly stuck?: 'open' | 'shut';
  };
  /** Back-pressure at the filler at which the nozzle shuts off, Pa. */
  readonly nozzleShutOffPa: number;
  /** Suction per boost of the ejector of a boosted engine. */
  readonly ejectorSuctionPerBoost: number;
  readonly sensors: readonly PressureSensor[];
  readonly readings: ReadingErrors;
}
