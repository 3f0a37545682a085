import type { LayoutId } from '../car.ts';
import type { LeakPlace, SystemParameters } from '../parameters.ts';
import { CANISTER_FAULTS } from './canister.ts';
import type { Fault, FaultKind } from './fault.ts';
import { ISOLATION_FAULTS } from './isolation.ts';
import { LEAK_FAULTS } from './leaks.ts';
import { PUMP_FAULTS } from './pump-module.ts';
import { PURGE_FAULTS } from './purge.ts';
import { SENSOR_FAULTS } from './sensors.ts';
import { TANK_VENT_FAULTS } from './tank-vent.ts';
import { TWO_PATH_FAULTS } from './two-path.ts';
import { VENT_FAULTS } from './vent.ts';

/** All kinds of fault. A new one is added to the list of its part and nowhere else. */
export const FAULT_KINDS: readonly FaultKind[] = [
  ...LEAK_FAULTS,
  ...PURGE_FAULTS,
  ...VENT_FAULTS,
  ...TANK_VENT_FAULTS,
  ...CANISTER_FAULTS,
  ...SENSOR_FAULTS,
  ...PUMP_FAULTS,
  ...ISOLATION_FAULTS,
  ...TWO_PATH_FAULTS,
];

/**
 * The kind of a fault by its name.
 *
 * Valid: names in the catalogue; throws on others, listing what there is.
 * Source: the catalogue.
 * @param kind name
 * @returns the kind
 */
export function faultKind(kind: string): FaultKind {
  const found = FAULT_KINDS.find((k) => k.kind === kind);
  if (found === undefined) {
    throw new Error(`no fault is called '${kind}'; expected one of: ${FAULT_KINDS.map((k) => k.kind).join(', ')}`);
  }
  return found;
}

/**
 * The kinds of fault that a layout can have.
 *
 * Valid: any layout.
 * Source: the catalogue.
 * @param layout the layout
 * @returns kinds
 */
export function faultKindsOf(layout: LayoutId): readonly FaultKind[] {
  return FAULT_KINDS.filter((k) => k.layouts === undefined || k.layouts.includes(layout));
}

/**
 * Applies faults, one after the other, to a copy of the parameters.
 *
 * Valid: faults that the layout can have, at places that the kind lists; throws otherwise, saying what is expected.
 * Source: the catalogue.
 * @param nominal parameters of the sound car
 * @param layout the car's layout
 * @param faults what is wrong with it
 * @returns changed copy
 */
export function applyFaults(nominal: SystemParameters, layout: LayoutId, faults: readonly Fault[]): SystemParameters {
  const p = structuredClonePlain(nominal);
  for (const fault of faults) {
    const kind = faultKind(fault.kind);
    if (kind.layouts !== undefined && !kind.layouts.includes(layout)) {
      throw new Error(`fault '${fault.kind}' needs a layout of ${kind.layouts.join(' or ')}; this car is '${layout}'`);
    }
    if (fault.place !== undefined && !(kind.places ?? []).includes(fault.place)) {
      const where = kind.places === undefined ? 'has only one place' : `can sit at ${kind.places.join(', ')}`;
      throw new Error(`fault '${fault.kind}' ${where}; found place '${fault.place}'`);
    }
    const size = fault.size ?? kind.size?.typical ?? 0;
    if (!Number.isFinite(size)) throw new Error(`fault '${fault.kind}': size is ${size}, expected a finite number`);
    const place: LeakPlace = fault.place ?? kind.places?.[0] ?? 'tankTop';
    kind.apply(p, size, place);
  }
  return p;
}

/** Copies plain nested data (the parameters hold nothing else), without needing any host function. */
function structuredClonePlain<T>(value: T): T {
  if (typeof value !== 'object' || value === null) return value;
  const out: Record<string, unknown> = {};
  for (const [key, part] of Object.entries(value)) out[key] = structuredClonePlain(part);
  return out as T;
}
