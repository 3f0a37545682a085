/** The words for causes, places, phases and certainty, the same on every page, sheet and terminal. */
import type { CauseId, CauseProbability, Finding, Place } from '../diagnosis/finding.ts';
import type { PhaseKind, ProcedureKind } from '../recording/recording.ts';
import type { LayoutId } from '../system/car.ts';

export interface CauseWords {
  /** As a table row says it. */
  readonly name: string;
  /** As an owner hears it, continuing "Most likely …". */
  readonly plain: string;
}

export const CAUSE_WORDS: Readonly<Record<CauseId, CauseWords>> = {
  none: { name: 'no fault seen', plain: 'nothing is wrong that this recording could show' },
  leak: { name: 'leak to the open air', plain: 'there is a small hole or a poor seal in the fuel-vapour system' },
  gross_leak: {
    name: 'large opening (cap or hose off)',
    plain: 'the fuel-vapour system is wide open somewhere, as with a missing cap or a hose that came off',
  },
  purge_leak: {
    name: 'purge valve seeps when shut',
    plain: 'the valve that feeds fuel vapour to the engine does not shut fully',
  },
  purge_stuck_closed: {
    name: 'purge valve does not open',
    plain: 'the valve that feeds fuel vapour to the engine does not open',
  },
  purge_stuck_open: {
    name: 'purge valve stuck open',
    plain: 'the valve that feeds fuel vapour to the engine stays open',
  },
  vent_leak: {
    name: 'vent valve does not seal',
    plain: 'the valve that should close the fuel-vapour system for its self-test does not seal',
  },
  vent_stuck_closed: {
    name: 'vent valve stuck shut',
    plain: 'the fresh-air valve of the fuel-vapour system stays shut',
  },
  vent_restricted: {
    name: 'vent path restricted',
    plain: 'the fresh-air path of the fuel-vapour system is partly plugged',
  },
  path_blocked: {
    name: 'vapour path from tank blocked',
    plain: 'the path for vapour out of the tank is blocked',
  },
  fill_valve_stuck_open: {
    name: 'fill-limit valve stuck open',
    plain: 'the valve in the tank that ends filling stays open',
  },
  sensor_bias: {
    name: 'tank pressure sensor: zero is off',
    plain: 'the tank pressure sensor reads wrong by a fixed amount',
  },
  sensor_gain: {
    name: 'tank pressure sensor: scale is off',
    plain: 'the tank pressure sensor reads too much or too little',
  },
  sensor_stuck: { name: 'tank pressure sensor stuck', plain: 'the tank pressure sensor does not move' },
  sensor_noisy: { name: 'tank pressure sensor noisy', plain: 'the tank pressure sensor or its wiring is unsteady' },
  canister_saturated: {
    name: 'canister full of fuel vapour',
    plain: 'the charcoal canister holds more fuel vapour than it should',
  },
  pump_weak: { name: 'leak-test pump weak', plain: 'the small pump that tests the system for leaks is too weak' },
  pump_dead: {
    name: 'leak-test pump does not run',
    plain: 'the small pump that tests the system for leaks does not run',
  },
  orifice_dirty: {
    name: 'reference orifice dirty',
    plain: 'the measuring orifice in the leak-test pump is partly blocked, so its comparison is wrong',
  },
  changeover_leak: {
    name: 'change-over valve leaks',
    plain: 'the valve that turns the leak-test pump to the tank does not seal',
  },
  changeover_stuck: {
    name: 'change-over valve does not move',
    plain: 'the valve that turns the leak-test pump to the tank does not move',
  },
  isolation_leak: { name: 'tank isolation valve leaks', plain: 'the valve that keeps the tank sealed does not seal' },
  isolation_stuck_shut: {
    name: 'tank isolation valve does not open',
    plain: 'the valve that keeps the tank sealed does not open',
  },
};

export const PHASE_WORDS: Readonly<Record<PhaseKind, string>> = {
  baseline: 'before',
  draw: 'draw',
  settle: 'settle',
  hold: 'hold',
  release: 'release',
  sealed: 'sealed',
  vented: 'vented',
  purge: 'purge',
  idle: 'no purge',
  filling: 'filling',
  filled: 'shut-off',
  reference: 'reference',
  'tank-pump': 'pump on tank',
  rest: 'other',
};

export const PROCEDURE_WORDS: Readonly<Record<ProcedureKind | 'unknown', string>> = {
  'vacuum-draw': 'leak self-test, engine running (vacuum draw)',
  'engine-off': 'engine-off vacuum test',
  'purge-drive': 'drive with purge',
  refuelling: 'refuelling',
  'pump-run': 'pump test with reference orifice',
  'sealed-hold': 'sealed-tank hold',
  unknown: 'procedure not recognised',
};

export const LAYOUT_NAMES: Readonly<Record<LayoutId, string>> = {
  'engine-vacuum': 'Engine-vacuum draw',
  'engine-off': 'Engine-off vacuum',
  'pump-reference': 'Pump with reference orifice',
  'sealed-tank': 'Sealed tank',
  'saddle-tank': 'Saddle tank',
  'two-path-purge': 'Two-path purge',
};

/** What an owner complains of, beside a lit lamp and codes. */
export const COMPLAINT_WORDS = {
  'slow fill': 'Pump nozzle clicks off, fills slowly',
  'rough after fill': 'Rough or hard start after filling',
  smell: 'Smell of fuel',
  'not ready': 'Evaporative monitor not ready',
  'hiss or collapse': 'Tank hisses hard, buckles or makes noise',
} as const;
export type ComplaintId = keyof typeof COMPLAINT_WORDS;

/** "cap and neck or tank top": places that cannot be told apart are always said together. */
export const placesInWords = (group: readonly Place[]): string =>
  group.length <= 2 ? group.join(' or ') : `${group.slice(0, -1).join(', ')} or ${group.at(-1)}`;

/** A probability in words for those who do not read percentages. */
export function certaintyInWords(probability: number): string {
  if (probability >= 0.95) return 'almost certain';
  if (probability >= 0.8) return 'very likely';
  if (probability >= 0.6) return 'likely';
  if (probability >= 0.4) return 'about as likely as not';
  if (probability >= 0.15) return 'possible';
  if (probability >= 0.03) return 'unlikely';
  return 'very unlikely';
}

/** The most probable group of places of a cause, if it has one. */
export const likeliestPlaces = (cause: Pick<CauseProbability, 'places'>): readonly Place[] | null =>
  cause.places.reduce<CauseProbability['places'][number] | null>(
    (best, place) => (best === null || place.probability > best.probability ? place : best),
    null,
  )?.group ?? null;

/** Causes whose name does not already say where they sit. */
const PLACED: ReadonlySet<CauseId> = new Set([
  'leak',
  'gross_leak',
  'purge_stuck_closed',
  'vent_restricted',
  'path_blocked',
]);

/** The likeliest places where they add something to the name of the cause. */
export function tellingPlaces(cause: Pick<CauseProbability, 'id' | 'places'>): readonly Place[] | null {
  const places = PLACED.has(cause.id) ? likeliestPlaces(cause) : null;
  return places === null || places.length === 0 ? null : places;
}

/** A ratio of less than about 1.6 to 1 (judgement). */
export const saysNothing = (logEvidence: number): boolean => Math.abs(logEvidence) < 0.5;

/** Evidence in words: natural log of the ratio against the best rival. */
export function evidenceInWords(logEvidence: number): string {
  const strength = Math.abs(logEvidence);
  if (saysNothing(logEvidence)) return 'says nothing either way';
  const side = logEvidence > 0 ? 'for' : 'against';
  if (strength < 2) return `weakly ${side}`;
  if (strength < 5) return `clearly ${side}`;
  return `strongly ${side}`;
}

/** The size and the first cause are only spoken of as a leak when the first cause has a hole. */
export const firstCause = (finding: Pick<Finding, 'causes'>): CauseProbability | null => finding.causes[0] ?? null;
