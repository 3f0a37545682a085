/**
 * What stands in for a part of which nothing is known. These are starting points for a simulation and centres of
 * priors, never facts about a car. "Judgement" = a plausible value without a source.
 */
import { CARBON_RATE_PER_S } from '../physics/carbon.ts';
import { PETROL_DENSITY_60F } from '../physics/fuel-vapour.ts';
import type { SystemParameters } from './parameters.ts';

export const TANK_VOLUME_M3 = 0.06; // common practice, no source: a mid-size car
export const NECK_VOLUME_M3 = 0.0015; // judgement: 1 m of 45 mm pipe
export const FILL_FRACTION = 0.5; // judgement
export const FUEL_SURFACE_M2 = 0.25; // judgement: 60 L at half, 0.12 m deep
export const MASS_TRANSFER_M_PER_S = 2e-4; // judgement: twice diffusion (1e-5 m2/s) through 0.1 m of still, heavy vapour
export const MASS_TRANSFER_FILLING_M_PER_S = 4e-3; // judgement: splashing, middle of natural convection 1e-3..1e-2 (textbook)
export const GAS_TO_WALL_W_PER_K = 3; // judgement: 0.6 m2 at 5 W/(m2 K), textbook range 2..10
export const GAS_TO_FUEL_W_PER_K = 1; // judgement: 0.25 m2 at 4 W/(m2 K)
export const FUEL_TO_AMBIENT_W_PER_K = 4; // judgement: 22 kg of petrol then follow the day with 3 h lag
export const SHELL_HEAT_CAPACITY_J_PER_K = 15_000; // judgement: 8 kg of polyethylene at 1.9 kJ/(kg K)
export const CAP_RELIEF_PRESSURE_PA = 12_000; // from memory: +1.5..+2.5 psi
export const CAP_RELIEF_VACUUM_PA = 6_000; // from memory: -0.5..-1 psi
export const RELIEF_SPAN_PA = 1_500; // judgement
export const RELIEF_DIAMETER_M = 4e-3; // judgement

export const PASSIVE_LOBE_SHARE = 0.45; // judgement
export const WEIR_HEIGHT_FRACTION = 0.55; // judgement
export const WEIR_FLOW_M3_PER_S = 0.05; // judgement: 1 % of a lobe above the crest runs off at 0.5 L/s
export const CROSSOVER_DIAMETER_M = 8e-3; // judgement
export const TRANSFER_FLOW_M3_PER_S = 2e-5; // from memory: 60..100 L/h
export const UNUSABLE_FRACTION = 0.02; // judgement

export const REID_VAPOUR_PRESSURE_PA = 62_000; // AP-42 7.1 lists RVP 9 psi as ordinary summer petrol
export const FUEL_HEAT_CAPACITY_J_PER_KG_K = 2200; // from memory: petrol near 20 degC
export const ETHANOL_VOLUME_FRACTION = 0.1; // common practice, no source

export const FILL_LIMIT_DIAMETER_M = 8e-3; // judgement; 12 mm with on-board recovery
export const FILL_LIMIT_DIAMETER_RECOVERY_M = 12e-3; // judgement
export const FILL_LIMIT_SHUT_FRACTION = 0.95; // judgement: some 5 % of the shell stays for expansion
export const FILL_LIMIT_OPEN_FRACTION = 0.94; // judgement
export const ROLLOVER_DIAMETER_M = 2e-3; // judgement
export const VAPOUR_LINE_DIAMETER_M = 7e-3; // judgement: passages of 4..8 mm bore
export const VAPOUR_LINE_DIAMETER_RECOVERY_M = 12e-3; // judgement
export const VAPOUR_LINE_VOLUME_M3 = 1.5e-4; // judgement: 2 m of 10 mm bore

export const CANISTER_CELLS = 3; // judgement: loading front resolved to a third of the bed
export const CANISTER_GAS_VOLUME_M3 = 1.5e-3; // judgement: 2.2 L of bed, 0.7 of it gas between and in the grains
export const CANISTER_HEAD_VOLUME_M3 = 4e-4; // judgement: ports and 3 m of purge line
export const CANISTER_CARBON_KG = 0.7; // judgement: 2.2 L at 0.32 kg/L
export const LOADING_TANK_END = 0.5; // judgement: purged, with its heel
export const LOADING_VENT_END = 0.25; // judgement
export const CANISTER_HEAT_CAPACITY_J_PER_K = 1000; // judgement: 0.7 kg of carbon at 1 kJ/(kg K) and the shell
export const CANISTER_TO_AMBIENT_W_PER_K = 1; // judgement: 0.1 m2 at 10 W/(m2 K)
export const BED_LENGTH_M = 0.25; // judgement
export const BED_AREA_M2 = 8.8e-3; // judgement: 2.2 L over 0.25 m
export const GRAIN_DIAMETER_M = 2e-3; // from memory: pellets of 2 mm
export const VOID_FRACTION = 0.4; // textbook, randomly packed grains

export const PURGE_OPEN_DIAMETER_M = 3.1e-3; // judgement: some 50 L/min choked
export const PURGE_SHUT_DIAMETER_M = 3e-5; // judgement: a sound seat seeps a little
export const PURGE_FREQUENCY_HZ = 15; // from memory: 10..20 Hz
export const PURGE_OPEN_DELAY_S = 3e-3; // judgement
export const PURGE_CLOSE_DELAY_S = 3e-3; // judgement

export const VENT_OPEN_DIAMETER_M = 9e-3; // judgement
export const VENT_SHUT_DIAMETER_M = 0; // judgement: a sound seat seals
export const VENT_FILTER_DIAMETER_M = 12e-3; // judgement: 10 L/min then drops well under 1 inH2O (common practice)
export const VENT_HOSE_VOLUME_M3 = 1e-4; // judgement

export const PUMP_FREE_FLOW_M3_PER_S = 1.6e-5; // judgement: plateau of 2..2.5 kPa through 0.5 mm
export const PUMP_STALL_PA = 4_000; // trade practice: a tight tank ends at 2.5..4 kPa
export const REFERENCE_ORIFICE_DIAMETER_M = 0.5e-3; // from memory: 0.5 mm
export const CHANGEOVER_DIAMETER_M = 5e-3; // judgement
export const PUMP_MODULE_VOLUME_M3 = 2e-5; // judgement

export const ISOLATION_OPEN_DIAMETER_M = 6e-3; // judgement
export const SEALED_RELIEF_PRESSURE_PA = 40_000; // from memory: wide-range sensor reads to +40 kPa
export const SEALED_RELIEF_VACUUM_PA = 15_000; // from memory

export const TEE_VOLUME_M3 = 5e-5; // judgement
export const CHECK_DIAMETER_M = 5e-3; // judgement
export const CHECK_CRACKING_PA = 100; // judgement
export const CHECK_FULLY_OPEN_PA = 1_500; // judgement
export const EJECTOR_SUCTION_PER_BOOST = 0.1; // from memory: 2..10 kPa at 20..100 kPa of boost

export const FILLER_OPEN_DIAMETER_M = 12e-3; // judgement: beside the nozzle
export const AIR_ENTRAINMENT = 0.05; // judgement, volume per volume; sealed filler
export const NOZZLE_SHUT_OFF_PA = 3_000; // from memory: filler back-pressure of 10..14 inH2O

export const SENSOR_LAG_S = 0.2; // judgement
export const SENSOR_NOISE_PA = 5; // judgement
export const SENSOR_MIN_GAUGE_PA = -3_750; // from memory: about 15 inH2O of vacuum
export const SENSOR_MAX_GAUGE_PA = 1_250; // from memory: about 5 inH2O
export const WIDE_SENSOR_MIN_GAUGE_PA = -15_000; // from memory: sealed tanks, -15..+40 kPa
export const WIDE_SENSOR_MAX_GAUGE_PA = 40_000; // from memory

/** A fresh set of nominal parameters; callers change their own copy. */
export function defaultParameters(): SystemParameters {
  return {
    tank: {
      shellVolumeM3: TANK_VOLUME_M3,
      neckVolumeM3: NECK_VOLUME_M3,
      fillFraction: FILL_FRACTION,
      surfaceAreaM2: FUEL_SURFACE_M2,
      massTransferMPerS: MASS_TRANSFER_M_PER_S,
      massTransferFillingMPerS: MASS_TRANSFER_FILLING_M_PER_S,
      gasToWallWPerK: GAS_TO_WALL_W_PER_K,
      gasToFuelWPerK: GAS_TO_FUEL_W_PER_K,
      fuelToAmbientWPerK: FUEL_TO_AMBIENT_W_PER_K,
      shellHeatCapacityJPerK: SHELL_HEAT_CAPACITY_J_PER_K,
      reliefPressurePa: CAP_RELIEF_PRESSURE_PA,
      reliefVacuumPa: CAP_RELIEF_VACUUM_PA,
      reliefSpanPa: RELIEF_SPAN_PA,
      reliefDiameterM: RELIEF_DIAMETER_M,
    },
    saddle: {
      passiveShare: PASSIVE_LOBE_SHARE,
      weirHeightFraction: WEIR_HEIGHT_FRACTION,
      weirFlowM3PerS: WEIR_FLOW_M3_PER_S,
      crossoverDiameterM: CROSSOVER_DIAMETER_M,
      transferFlowM3PerS: TRANSFER_FLOW_M3_PER_S,
      unusableFraction: UNUSABLE_FRACTION,
    },
    fuel: {
      reidVapourPressurePa: REID_VAPOUR_PRESSURE_PA,
      ethanolVolumeFraction: ETHANOL_VOLUME_FRACTION,
      densityKgPerM3: PETROL_DENSITY_60F,
      heatCapacityJPerKgK: FUEL_HEAT_CAPACITY_J_PER_KG_K,
      vapourPressureFactor: 1,
    },
    tankVent: {
      fillLimitDiameterM: FILL_LIMIT_DIAMETER_M,
      fillLimitShutFraction: FILL_LIMIT_SHUT_FRACTION,
      fillLimitOpenFraction: FILL_LIMIT_OPEN_FRACTION,
      rolloverDiameterM: ROLLOVER_DIAMETER_M,
      lineDiameterM: VAPOUR_LINE_DIAMETER_M,
      lineVolumeM3: VAPOUR_LINE_VOLUME_M3,
    },
    canister: {
      cells: CANISTER_CELLS,
      gasVolumeM3: CANISTER_GAS_VOLUME_M3,
      headVolumeM3: CANISTER_HEAD_VOLUME_M3,
      carbonKg: CANISTER_CARBON_KG,
      activeFraction: 1,
      loadingTankEnd: LOADING_TANK_END,
      loadingVentEnd: LOADING_VENT_END,
      rateHz: CARBON_RATE_PER_S,
      heatCapacityJPerK: CANISTER_HEAT_CAPACITY_J_PER_K,
      toAmbientWPerK: CANISTER_TO_AMBIENT_W_PER_K,
      bedLengthM: BED_LENGTH_M,
      bedAreaM2: BED_AREA_M2,
      grainDiameterM: GRAIN_DIAMETER_M,
      voidFraction: VOID_FRACTION,
      resistanceFactor: 1,
    },
    purge: {
      openDiameterM: PURGE_OPEN_DIAMETER_M,
      shutDiameterM: PURGE_SHUT_DIAMETER_M,
      stuckOpenDiameterM: 0,
      frequencyHz: PURGE_FREQUENCY_HZ,
      openDelayS: PURGE_OPEN_DELAY_S,
      closeDelayS: PURGE_CLOSE_DELAY_S,
    },
    vent: {
      valveOpenDiameterM: VENT_OPEN_DIAMETER_M,
      valveShutDiameterM: VENT_SHUT_DIAMETER_M,
      filterDiameterM: VENT_FILTER_DIAMETER_M,
      volumeM3: VENT_HOSE_VOLUME_M3,
    },
    pump: {
      freeFlowM3PerS: PUMP_FREE_FLOW_M3_PER_S,
      stallPa: PUMP_STALL_PA,
      orificeDiameterM: REFERENCE_ORIFICE_DIAMETER_M,
      changeoverDiameterM: CHANGEOVER_DIAMETER_M,
      changeoverShutDiameterM: 0,
      moduleVolumeM3: PUMP_MODULE_VOLUME_M3,
      changeoverSticks: false,
    },
    isolation: {
      openDiameterM: ISOLATION_OPEN_DIAMETER_M,
      shutDiameterM: 0,
      reliefPressurePa: SEALED_RELIEF_PRESSURE_PA,
      reliefVacuumPa: SEALED_RELIEF_VACUUM_PA,
    },
    boost: {
      teeVolumeM3: TEE_VOLUME_M3,
      checkDiameterM: CHECK_DIAMETER_M,
      checkCrackingPa: CHECK_CRACKING_PA,
      checkFullyOpenPa: CHECK_FULLY_OPEN_PA,
      manifoldCheckShutDiameterM: 0,
      ejectorCheckShutDiameterM: 0,
      ejectorCheckDiameterM: CHECK_DIAMETER_M,
      ejectorSuctionPerBoost: EJECTOR_SUCTION_PER_BOOST,
    },
    filler: {
      closure: 'capped',
      recovery: true,
      openDiameterM: FILLER_OPEN_DIAMETER_M,
      airEntrainment: AIR_ENTRAINMENT,
      nozzleShutOffPa: NOZZLE_SHUT_OFF_PA,
    },
    sensor: {
      lagS: SENSOR_LAG_S,
      gain: 1,
      offsetPa: 0,
      noisePa: SENSOR_NOISE_PA,
      minGaugePa: SENSOR_MIN_GAUGE_PA,
      maxGaugePa: SENSOR_MAX_GAUGE_PA,
    },
    readings: { levelGain: 1, levelOffset: 0, fuelTemperatureOffsetK: 0, ambientTemperatureOffsetK: 0 },
    leakDiametersM: {
      cap: 0,
      neck: 0,
      fillerHose: 0,
      senderSeal: 0,
      tankTop: 0,
      vapourLine: 0,
      canister: 0,
      ventSide: 0,
      purgeLine: 0,
    },
  };
}
