/**
 * The commands and boundary conditions of one recording, laid out as the sequence of time steps that the
 * two-space model walks through. Built once per recording; the fit runs it thousands of times.
 */
export interface Drive {
  readonly stepCount: number;
  /** Length of each step [s]. */
  readonly dtS: Float64Array;
  /** Purge duty during the step [0..1]. */
  readonly duty: Float64Array;
  /** 1 where the vent valve is commanded shut. */
  readonly ventShut: Uint8Array;
  readonly manifoldAbsPa: Float64Array;
  /** Liquid that flows into the tank during the step [m3/s]. */
  readonly fillM3PerS: Float64Array;
  /** 1 where the fill-limit valve may have shut (time after shut-off at full level). */
  readonly full: Uint8Array;
  /** Index of the observation that the end of the step yields, or -1. */
  readonly observation: Int32Array;
  /** Slot of a movable command change at the end (positive) or start (negative) of the step, 0 none; slot + 1. */
  readonly shift: Int8Array;
  /** Position on the warming knots [0..knots-1] and on the draw's drift knots (-1 outside a draw). */
  readonly warmPosition: Float64Array;
  readonly driftPosition: Float64Array;
  readonly warmKnots: number;
  readonly observationCount: number;
  /** Ambient pressure at the middle of the recording [Pa]. */
  readonly ambientAbsPa: number;
  /** From the start of the first step to the middle of the recording [s]. */
  readonly toMiddleS: number;
  readonly ambientTemperatureK: number;
  readonly tankTemperatureK: number;
  /** Relative rise of the vapour pressure per kelvin [1/K]. */
  readonly vapourSensitivityPerK: number;
  /** Output limits of the sensor [Pa gauge]. */
  readonly clipLowGaugePa: number;
  readonly clipHighGaugePa: number;
}
