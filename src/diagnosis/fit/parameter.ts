/**
 * Free parameters of a fit. Each is a standard normal variable z under its prior; `kind` says how z becomes
 * a quantity of the model.
 */
export interface Parameter {
  readonly name: string;
  /** Slot of `Q` that it sets. */
  readonly slot: number;
  /** `log`: centre exp(sd z); `linear`: centre + sd z. */
  readonly kind: 'log' | 'linear';
  /** Centre in the quantity's own unit; sd in ln for `log`, else in the quantity's unit. */
  readonly centre: number;
  readonly sd: number;
  /** -1: one value for the car; otherwise the index of the recording it belongs to. */
  readonly recording: number;
  /** z where fits begin; absent, the centre. */
  readonly start?: number;
}

/** Value of a parameter at z, in its quantity's unit. */
export function parameterValue(p: Parameter, z: number): number {
  return p.kind === 'log' ? p.centre * Math.exp(p.sd * z) : p.centre + p.sd * z;
}

/** Change of the quantity per unit of z, in its own unit. */
export function parameterSlope(p: Parameter, z: number): number {
  return p.kind === 'log' ? p.sd * parameterValue(p, z) : p.sd;
}

/** z at which a parameter has a value. */
export function parameterPosition(p: Parameter, value: number): number {
  return (p.kind === 'log' ? Math.log(value / p.centre) : value - p.centre) / p.sd;
}

/**
 * Writes the quantities of one recording.
 *
 * @param parameters all parameters of the fit
 * @param z their standard normal values
 * @param recording index of the recording
 * @param base quantities that no parameter sets
 * @param q receives the quantities
 */
export function fillQuantities(
  parameters: readonly Parameter[],
  z: ArrayLike<number>,
  recording: number,
  base: Float64Array,
  q: Float64Array,
): void {
  q.set(base);
  for (let i = 0; i < parameters.length; i++) {
    const p = parameters[i]!;
    if (p.recording === -1 || p.recording === recording) q[p.slot] = parameterValue(p, z[i]!);
  }
}
