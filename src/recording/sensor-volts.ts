/** What must be known of the pressure sensor to turn its volts into a pressure. A car's `pressureSensor` fits. */
export interface SensorRange {
  readonly minGaugePa: number;
  readonly maxGaugePa: number;
  readonly minV?: number | undefined;
  readonly maxV?: number | undefined;
}

export interface SensorOwner {
  readonly pressureSensor?: SensorRange | undefined;
}

/** Gauge pressure [Pa] of a linear sensor at each output [V]; undefined when its volts are not known. */
export function pressureFromVolts(volts: Float64Array, sensor: SensorRange | undefined): Float64Array | undefined {
  if (sensor?.minV === undefined || sensor.maxV === undefined || sensor.minV === sensor.maxV) return undefined;
  const { minGaugePa, minV } = sensor;
  const slope = (sensor.maxGaugePa - minGaugePa) / (sensor.maxV - minV);
  return volts.map((v) => minGaugePa + (v - minV) * slope);
}
