/** A ratiometric pressure sensor and what spoils its reading. */

/** Share of the supply voltage at the lower end of the range [-]. Source: industry convention; from memory. */
export const RATIOMETRIC_LOW = 0.1;

/** Share of the supply voltage at the upper end of the range [-]. Source: industry convention; from memory. */
export const RATIOMETRIC_HIGH = 0.9;

/**
 * Voltage of a ratiometric sensor at a pressure, 0.1 to 0.9 of the supply.
 *
 * Valid: within the range; linear beyond it (clip separately).
 * Source: industry convention; from memory.
 * @param gaugePa pressure inside less ambient [Pa]
 * @param rangeLowGaugePa pressure at the lower end [Pa]
 * @param rangeHighGaugePa pressure at the upper end [Pa]
 * @param supplyV supply voltage [V]
 * @returns signal voltage [V]
 */
export function ratiometricVoltage(
  gaugePa: number,
  rangeLowGaugePa: number,
  rangeHighGaugePa: number,
  supplyV: number,
): number {
  const share = (gaugePa - rangeLowGaugePa) / (rangeHighGaugePa - rangeLowGaugePa);
  return supplyV * (RATIOMETRIC_LOW + share * (RATIOMETRIC_HIGH - RATIOMETRIC_LOW));
}

/**
 * Pressure from the voltage of a ratiometric sensor: inverse of ratiometricVoltage.
 *
 * Valid: as ratiometricVoltage; an assumed supply that is wrong shifts the result.
 * Source: industry convention; from memory.
 * @param signalV signal voltage [V]
 * @param rangeLowGaugePa pressure at the lower end [Pa]
 * @param rangeHighGaugePa pressure at the upper end [Pa]
 * @param supplyV supply voltage [V]
 * @returns gauge pressure [Pa]
 */
export function ratiometricPressure(
  signalV: number,
  rangeLowGaugePa: number,
  rangeHighGaugePa: number,
  supplyV: number,
): number {
  const share = (signalV / supplyV - RATIOMETRIC_LOW) / (RATIOMETRIC_HIGH - RATIOMETRIC_LOW);
  return rangeLowGaugePa + share * (rangeHighGaugePa - rangeLowGaugePa);
}

/**
 * Reading of a sensor with an error of gain and offset.
 *
 * Valid: linear error.
 * Source: definition.
 * @param truePa true pressure [Pa]
 * @param gain factor, 1 when right [-]
 * @param offsetPa added to the reading, 0 when right [Pa]
 * @returns reading [Pa]
 */
export function sensorReading(truePa: number, gain: number, offsetPa: number): number {
  return gain * truePa + offsetPa;
}

/**
 * Rate of change of a lagging sensor's state.
 *
 * Valid: time constant > 0.
 * Source: first-order lag.
 * @param inputPa what acts on the sensor [Pa]
 * @param statePa what the sensor shows [Pa]
 * @param timeConstantS lag [s]
 * @returns rate of the state [Pa/s]
 */
export function sensorLagRate(inputPa: number, statePa: number, timeConstantS: number): number {
  return (inputPa - statePa) / timeConstantS;
}

/**
 * Reading rounded to the steps that a sensor or a data link can show.
 *
 * Valid: step > 0; a step of 0 leaves the value as it is.
 * Source: definition of a uniform quantiser.
 * @param value reading, in the unit of step [-]
 * @param step size of one step, in the unit of value [-]
 * @returns nearest multiple of the step, in the unit of value [-]
 */
export function quantise(value: number, step: number): number {
  return step > 0 ? Math.round(value / step) * step : value;
}

/**
 * Reading held within the limits of the sensor.
 *
 * Valid: low <= high.
 * Source: definition.
 * @param value reading, in the unit of the limits [-]
 * @param low lower limit [-]
 * @param high upper limit [-]
 * @returns limited reading [-]
 */
export function clip(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
