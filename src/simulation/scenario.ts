import type { Network } from '../system/network.ts';
import type { StartConditions } from './initial-state.ts';
import type { Series } from './inputs.ts';
import type { Procedure } from './procedure.ts';

/** What surrounds the car while the procedure runs. Series are on the scenario's clock, which starts at 0. */
export interface Conditions {
  readonly ambientAbsPa: Series;
  readonly ambientTemperatureK: Series;
  readonly start: StartConditions;
  /** Manifold pressure while the engine runs; with the engine off it is ambient. Absent where no engine runs. */
  readonly manifoldAbsPa?: Series;
  /** Liquid dispensed while the nozzle is on, and its temperature (absent = ambient). */
  readonly fillFlowM3PerS?: Series;
  readonly fillTemperatureK?: Series;
  /** Fuel burnt while the engine runs; absent = none. */
  readonly fuelDrawM3PerS?: Series;
  /** Heat into the fuel (exhaust, pump, road); absent = none. */
  readonly fuelHeatW?: Series;
  /** For the fuel trim; absent = no trim in the recording. */
  readonly engine?: EngineConditions;
  readonly vehicleSpeedMPerS?: Series;
}

export interface EngineConditions {
  readonly displacementM3: number;
  readonly speedRpm: Series;
  /** Lag of the short trim behind the mixture, s. */
  readonly trimLagS: number;
  /** Most that the module corrects, as a fraction. */
  readonly trimLimit: number;
  /** Scatter of the trim, as a fraction. */
  readonly trimNoise: number;
}

/** How the recording is taken. */
export interface Sampling {
  readonly rateHz: number;
  /** Scatter of the sample times as a share of the interval, 0 to below 0.5. */
  readonly jitter: number;
  /** Step of the pressure channel, Pa; 0 = none. */
  readonly pressureStepPa: number;
  /** Standard deviation added to the noise of each sensor's own, Pa. */
  readonly noisePa: number;
  /** Slosh: standard deviation and correlation time of pressure swings while driving. */
  readonly slosh?: { readonly pressurePa: number; readonly correlationS: number };
  readonly seed: number;
}

/** 10 Hz, no jitter, no steps; the sensors' own noise. */
export const CLEAN_SAMPLING: Sampling = { rateHz: 10, jitter: 0, pressureStepPa: 0, noisePa: 0, seed: 1 };

export interface Scenario {
  readonly label: string;
  readonly network: Network;
  readonly procedure: Procedure;
  readonly conditions: Conditions;
  readonly sampling: Sampling;
  /** Relative tolerance of the integration; 1e-5 is about 1 Pa. Absent = that. */
  readonly relativeTolerance?: number;
  /** Most steps before it gives up; absent = the integrator's default. */
  readonly maxSteps?: number;
}
