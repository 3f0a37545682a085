import { findResolution } from './resolution.ts';
import { quantile, sortedSample } from './value-range.ts';

/** A barometer whose steps are at least this coarse is taken as one number, or it would put steps into the trace. */
const COARSE_BAROMETER_PA = 100;

/** Subtracts ambient pressure from absolute pressures in place; gives the remark a reader needs. */
export function subtractAmbient(pressurePa: Float64Array, ambient: Float64Array | number, column: string): string {
  if (typeof ambient === 'number') {
    for (let i = 0; i < pressurePa.length; i++) pressurePa[i] = pressurePa[i]! - ambient;
    return `"${column}" is absolute: ${Math.round(ambient)} Pa, given as ambient pressure, was subtracted`;
  }
  const sorted = sortedSample(ambient);
  const step = findResolution(ambient)?.step;
  const constant = quantile(sorted, 0.5);
  const spread = quantile(sorted, 1) - quantile(sorted, 0);
  if (step === undefined || step >= COARSE_BAROMETER_PA || spread === 0) {
    for (let i = 0; i < pressurePa.length; i++) pressurePa[i] = pressurePa[i]! - constant;
    return `"${column}" is absolute: the barometer's median of ${Math.round(constant)} Pa was subtracted; its steps may be as coarse as 1 kPa, so take the zero from a time with the vent open`;
  }
  let held = Number.NaN;
  let first = 0;
  while (first < ambient.length && Number.isNaN(ambient[first]!)) first++;
  held = ambient[first] ?? Number.NaN;
  for (let i = 0; i < pressurePa.length; i++) {
    if (!Number.isNaN(ambient[i]!)) held = ambient[i]!;
    pressurePa[i] = pressurePa[i]! - held;
  }
  return `"${column}" is absolute: the barometer was subtracted sample by sample`;
}
