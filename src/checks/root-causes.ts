/**
 * What can be wrong, as finely as a repair tells apart: the root causes F01 to F20 of the priors table, some split where
 * two parts are repaired apart. Shares of a family and of looks are judgement.
 */
import type { CauseId, Place } from '../diagnosis/finding.ts';
import type { LayoutId } from '../system/car.ts';

export interface RootCause {
  readonly id: RootCauseId;
  /** Row of the priors table. */
  readonly family: string;
  /** Share of the family's prior; judgement. */
  readonly share: number;
  /** How it looks to gas, valves and sensor, as shares of it; judgement. */
  readonly looks: Readonly<Partial<Record<CauseId, number>>>;
  /** Where the finding may place it; empty: the finding names no place. */
  readonly places: readonly Place[];
  /** Absent: every layout. */
  readonly layouts?: readonly LayoutId[];
}

export const ROOT_CAUSE_IDS = [
  'F01',
  'F02p',
  'F02h',
  'F03',
  'F04',
  'F05',
  'F06v',
  'F06f',
  'F07',
  'F08',
  'F09v',
  'F09p',
  'F10',
  'F11',
  'F12f',
  'F12c',
  'F13',
  'F14',
  'F15p',
  'F15v',
  'F16',
  'F17',
  'F18',
  'F19',
  'F20',
] as const;
export type RootCauseId = (typeof ROOT_CAUSE_IDS)[number];

export const ROOT_CAUSES: readonly RootCause[] = [
  { id: 'F01', family: 'F01', share: 1, looks: { leak: 0.6, gross_leak: 0.4 }, places: ['cap and neck'] },
  { id: 'F02p', family: 'F02', share: 0.5, looks: { leak: 0.75, gross_leak: 0.25 }, places: ['cap and neck'] },
  {
    id: 'F02h',
    family: 'F02',
    share: 0.5,
    looks: { leak: 0.75, gross_leak: 0.25 },
    places: ['cap and neck', 'tank top'],
  },
  { id: 'F03', family: 'F03', share: 1, looks: { purge_leak: 0.55, purge_stuck_open: 0.45 }, places: ['purge valve'] },
  { id: 'F04', family: 'F04', share: 1, looks: { purge_stuck_closed: 1 }, places: ['purge valve', 'purge line'] },
  { id: 'F05', family: 'F05', share: 1, looks: { vent_leak: 1 }, places: ['vent valve'] },
  {
    id: 'F06v',
    family: 'F06',
    share: 0.45,
    looks: { vent_stuck_closed: 0.9, vent_restricted: 0.1 },
    places: ['vent valve'],
  },
  {
    id: 'F06f',
    family: 'F06',
    share: 0.55,
    looks: { vent_restricted: 0.9, vent_stuck_closed: 0.1 },
    places: ['vent side'],
  },
  { id: 'F07', family: 'F07', share: 1, looks: { leak: 0.8, gross_leak: 0.2 }, places: ['canister'] },
  {
    id: 'F08',
    family: 'F08',
    share: 1,
    looks: { canister_saturated: 0.8, vent_restricted: 0.2 },
    places: ['canister', 'vent side'],
  },
  { id: 'F09v', family: 'F09', share: 0.5, looks: { leak: 0.7, gross_leak: 0.3 }, places: ['vapour line'] },
  {
    id: 'F09p',
    family: 'F09',
    share: 0.5,
    looks: { leak: 0.6, gross_leak: 0.35, purge_stuck_closed: 0.05 },
    places: ['purge line'],
  },
  { id: 'F10', family: 'F10', share: 1, looks: { leak: 0.9, gross_leak: 0.1 }, places: ['tank top'] },
  { id: 'F11', family: 'F11', share: 1, looks: { leak: 1 }, places: ['tank top'] },
  {
    id: 'F12f',
    family: 'F12',
    share: 0.85,
    looks: { path_blocked: 0.6, fill_valve_stuck_open: 0.4 },
    places: ['fill-limit valve'],
  },
  { id: 'F12c', family: 'F12', share: 0.15, looks: { none: 1 }, places: [] },
  { id: 'F13', family: 'F13', share: 1, looks: { path_blocked: 1 }, places: ['tank to canister'] },
  {
    id: 'F14',
    family: 'F14',
    share: 1,
    looks: { sensor_bias: 0.4, sensor_stuck: 0.25, sensor_gain: 0.2, sensor_noisy: 0.15 },
    places: ['pressure sensor'],
  },
  { id: 'F15p', family: 'F15', share: 0.5, looks: { purge_stuck_closed: 1 }, places: ['purge valve'] },
  { id: 'F15v', family: 'F15', share: 0.5, looks: { vent_leak: 1 }, places: ['vent valve'] },
  { id: 'F16', family: 'F16', share: 1, looks: { none: 1 }, places: [] },
  {
    id: 'F17',
    family: 'F17',
    share: 1,
    looks: { pump_weak: 0.35, pump_dead: 0.15, orifice_dirty: 0.2, changeover_leak: 0.15, changeover_stuck: 0.15 },
    places: ['pump module'],
    layouts: ['pump-reference'],
  },
  {
    id: 'F18',
    family: 'F18',
    share: 1,
    looks: { isolation_leak: 0.5, isolation_stuck_shut: 0.5 },
    places: ['isolation valve'],
    layouts: ['sealed-tank'],
  },
  {
    id: 'F19',
    family: 'F19',
    share: 1,
    looks: { purge_stuck_closed: 0.5, none: 0.5 },
    places: ['purge valve', 'purge line'],
    layouts: ['two-path-purge'],
  },
  { id: 'F20', family: 'F20', share: 1, looks: { none: 1 }, places: [] },
];

export const rootCause = (id: RootCauseId): RootCause => ROOT_CAUSES.find((cause) => cause.id === id)!;

/** Causes of the finding that a root cause looks like, most usual first. */
export const findingCausesOf = (id: RootCauseId): CauseId[] =>
  (Object.entries(rootCause(id).looks) as [CauseId, number][]).sort((a, b) => b[1] - a[1]).map(([cause]) => cause);

/** Root causes that let vapour or air through where it should be tight. */
export const LEAKS = [
  'F01',
  'F02p',
  'F02h',
  'F03',
  'F05',
  'F07',
  'F09v',
  'F09p',
  'F10',
  'F11',
  'F15v',
] as const satisfies readonly RootCauseId[];
