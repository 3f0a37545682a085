/** Codes that a simulated car has set. SAE J2012 names; which limit belongs to which code: common practice, no source. */
import { faultKind } from '../../system/faults/catalogue.ts';
import type { Fault } from '../../system/faults/fault.ts';

const VERY_SMALL_M = 0.75e-3;
const LARGE_M = 3e-3;

export function codesFor(fault: Fault | undefined): string[] {
  if (fault === undefined) return [];
  const { part, size } = faultKind(fault.kind);
  if (fault.kind === 'leak') {
    const diameterM = fault.size ?? size?.typical ?? 0;
    return [diameterM < VERY_SMALL_M ? 'P0456' : diameterM < LARGE_M ? 'P0442' : 'P0455'];
  }
  if (part === 'purgeValve') return ['P0441'];
  return part === 'ventValve' ? ['P0446'] : [];
}
