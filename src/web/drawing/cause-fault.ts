import type { CauseId, CauseProbability, Place } from '../../diagnosis/finding.ts';
import type { LayoutId } from '../../system/car.ts';
import { faultKindsOf } from '../../system/faults/catalogue.ts';
import type { Fault } from '../../system/faults/fault.ts';
import type { LeakPlace } from '../../system/parameters.ts';

/** The fault that stands for a cause on the drawing. Causes that are no fault of a part have none. */
const KIND_OF: Readonly<Partial<Record<CauseId, string>>> = {
  leak: 'leak',
  gross_leak: 'leak',
  purge_leak: 'purge-seeping',
  purge_stuck_closed: 'purge-stuck-shut',
  purge_stuck_open: 'purge-stuck-open',
  vent_leak: 'vent-not-sealing',
  vent_stuck_closed: 'vent-stuck-shut',
  vent_restricted: 'vent-choked',
  path_blocked: 'vapour-line-blocked',
  fill_valve_stuck_open: 'fill-limit-stuck-open',
  sensor_bias: 'sensor-offset',
  sensor_gain: 'sensor-gain',
  sensor_stuck: 'sensor-stuck',
  sensor_noisy: 'sensor-noisy',
  canister_saturated: 'canister-saturated',
  pump_weak: 'pump-weak',
  pump_dead: 'pump-dead',
  orifice_dirty: 'orifice-dirty',
  changeover_leak: 'changeover-leaks',
  changeover_stuck: 'changeover-sticks',
  isolation_leak: 'isolation-leaks',
  isolation_stuck_shut: 'isolation-stuck-shut',
};

const PLACE_OF: Readonly<Partial<Record<Place, LeakPlace>>> = {
  'cap and neck': 'cap',
  'tank top': 'senderSeal',
  'vapour line': 'vapourLine',
  canister: 'canister',
  'vent side': 'ventSide',
  'purge line': 'purgeLine',
};

/** Kinds whose size the finding's diameter is: holes to the open air. A valve's seep to the engine is none. */
const SIZED = new Set(['leak', 'vent-not-sealing']);

export interface DrawnCause {
  readonly fault: Fault;
  readonly cause: CauseProbability;
  /** The finding gives no size; drawn is the one that such faults usually have. */
  readonly isSizeAssumed: boolean;
  /** The likeliest place of the cause, and its probability. */
  readonly place?: { readonly name: Place; readonly probability: number };
}

/** The first cause of a finding as a fault at its likeliest place with its median size; undefined where nothing can be drawn. */
export function faultOfCause(cause: CauseProbability, layout: LayoutId): DrawnCause | undefined {
  const kindName = KIND_OF[cause.id];
  const kind = faultKindsOf(layout).find((k) => k.kind === kindName);
  if (kind === undefined) return undefined;
  const likeliest = [...cause.places].sort((a, b) => b.probability - a.probability)[0];
  const name = likeliest?.group[0];
  const place = name === undefined || kind.places === undefined ? undefined : PLACE_OF[name];
  const size = SIZED.has(kind.kind) && cause.diameterMm !== undefined ? cause.diameterMm.median * 1e-3 : undefined;
  return {
    cause,
    isSizeAssumed: kind.size !== undefined && size === undefined,
    fault: {
      kind: kind.kind,
      ...(place === undefined ? {} : { place }),
      ...(size === undefined ? {} : { size }),
    },
    ...(likeliest === undefined || name === undefined ? {} : { place: { name, probability: likeliest.probability } }),
  };
}
