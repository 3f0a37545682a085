/**
 * Free parameters of a fit. Each is a standard normal variable z under its prior; `kind` says how z becomes
 * a quantity of the model.
 */
import { Q } from '../model/quantities.ts';

export interface Parameter {
  readonly name: string;
  /** Slot of `Q` that it sets. */
  readonly slot: number;
  /** `log`: centre exp(sd z); `linear`: centre + sd z; `initial`: as linear, relative to the first reading. */
  readonly kind: 'log' | 'linear' | 'initial';
  /** Centre in the quantity's own unit; sd in ln for `log`, else in the quantity's unit. */
  readonly centre: number;
  readonly sd: number;
  /** -1: one value for the car; otherwise the index of the recording it belongs to. */
  readonly recording: number;
}

/**
 * Writes the quantities of one recording.
 *
 * @param parameters all parameters of the fit
 * @param z their standard normal values
 * @param recording index of the recording
 * @param firstReadingPa first reading of that recording [Pa gauge]
 * @param base quantities that no parameter sets
 * @param q receives the quantities
 */
export function fillQuantities(
  parameters: readonly Parameter[],
  z: ArrayLike<number>,
  recording: number,
  firstReadingPa: number,
  base: Float64Array,
  q: Float64Array,
): void {
  q.set(base);
  let initial = -1;
  for (let i = 0; i < parameters.length; i++) {
    const p = parameters[i]!;
    if (p.recording !== -1 && p.recording !== recording) continue;
    if (p.kind === 'log') q[p.slot] = p.centre * Math.exp(p.sd * z[i]!);
    else if (p.kind === 'linear') q[p.slot] = p.centre + p.sd * z[i]!;
    else initial = i;
  }
  if (initial >= 0) {
    const p = parameters[initial]!;
    // the sensor's own errors are not pressure: what the tank holds at the start is the reading without them
    q[p.slot] = (firstReadingPa - q[Q.offset]!) / q[Q.gain]! + p.centre + p.sd * z[initial]!;
  }
}
