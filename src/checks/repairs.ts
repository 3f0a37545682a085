/**
 * Repairs: what each removes, hours, parts and access. Hours are the middles of typical ranges (judgement), parts are
 * multiples of one labour hour (class K1 0.15, K2 0.5, K3 1.25, K4 3.5, K5 7 and middles between; judgement).
 */
import type { Figure } from './figure.ts';
import type { RootCauseId } from './root-causes.ts';
import type { SetupId } from './setups.ts';

export const REPAIR_IDS = [
  'cap',
  'filler pipe',
  'filler hose',
  'purge valve',
  'vent valve',
  'vent filter',
  'canister',
  'vapour line',
  'purge line',
  'sender seal',
  'tank',
  'fill-limit valve',
  'inlet check valve',
  'pressure sensor',
  'purge circuit',
  'vent circuit',
  'level sender',
  'pump module',
  'isolation valve',
  'ejector',
  'calibration',
] as const;
export type RepairId = (typeof REPAIR_IDS)[number];

export interface Repair {
  readonly id: RepairId;
  readonly fixes: readonly RootCauseId[];
  /** Minutes of work, set-ups and verification not counted. */
  readonly minutes: number;
  /** Price of parts in labour hours. */
  readonly partsLabourHours: number;
  readonly setups: readonly SetupId[];
  /** The check that proves it. */
  readonly verifiedBy: 'T37' | 'T31' | 'T38';
  /** True where a part is replaced: then a wrong guess is a part replaced needlessly. */
  readonly replacesPart: boolean;
}

const repair = (
  id: RepairId,
  fixes: readonly RootCauseId[],
  minutes: number,
  partsLabourHours: number,
  setups: readonly SetupId[],
  verifiedBy: Repair['verifiedBy'],
  replacesPart = true,
): Repair => ({ id, fixes, minutes, partsLabourHours, setups, verifiedBy, replacesPart });

export const REPAIRS: readonly Repair[] = [
  repair('cap', ['F01'], 6, 0.15, [], 'T37'),
  repair('filler pipe', ['F02p'], 84, 1.25, ['lift'], 'T37'),
  repair('filler hose', ['F02h'], 60, 0.5, ['lift'], 'T37'),
  repair('purge valve', ['F03', 'F04'], 30, 0.5, [], 'T31'),
  repair('vent valve', ['F05', 'F06v'], 54, 0.9, ['lift'], 'T31'),
  repair('vent filter', ['F06f'], 30, 0.3, ['lift'], 'T31'),
  repair('canister', ['F07', 'F08'], 69, 2.2, ['lift'], 'T37'),
  repair('vapour line', ['F09v', 'F13'], 78, 0.5, ['lift'], 'T37'),
  repair('purge line', ['F09p'], 33, 0.3, [], 'T37'),
  repair('sender seal', ['F10'], 45, 0.5, ['lift', 'tank lowered'], 'T37'),
  repair('tank', ['F11'], 135, 7, ['lift', 'tank lowered'], 'T37'),
  repair('fill-limit valve', ['F12f'], 105, 3.5, ['lift', 'tank lowered'], 'T31'),
  repair('inlet check valve', ['F12c'], 100, 0.9, ['lift'], 'T31'),
  repair('pressure sensor', ['F14'], 60, 0.9, ['lift'], 'T31'),
  repair('purge circuit', ['F15p'], 75, 0.3, [], 'T31', false),
  repair('vent circuit', ['F15v'], 75, 0.3, ['lift'], 'T31', false),
  repair('level sender', ['F16'], 45, 1.25, ['lift', 'tank lowered'], 'T38'),
  repair('pump module', ['F17'], 72, 3.5, ['lift'], 'T31'),
  repair('isolation valve', ['F18'], 120, 2.2, ['lift'], 'T31'),
  repair('ejector', ['F19'], 75, 0.9, [], 'T31'),
  repair('calibration', ['F20'], 45, 0.3, [], 'T38', false),
];

export const repairMinutesKey = (id: RepairId): string => `repair.${id}.minutes`;
export const repairPartsKey = (id: RepairId): string => `repair.${id}.parts`;
export const REPAIR_FIGURES: readonly Figure[] = REPAIRS.flatMap((r) => [
  { key: repairMinutesKey(r.id), value: r.minutes, mark: 'judgement', unit: 'min', least: 0, most: 3000 } as const,
  {
    key: repairPartsKey(r.id),
    value: r.partsLabourHours,
    mark: 'judgement',
    unit: 'labour hours',
    least: 0,
    most: 100,
  } as const,
]);

/** Set-ups that the verification needs. */
export const VERIFY_SETUPS: Readonly<Record<Repair['verifiedBy'], readonly SetupId[]>> = {
  T37: ['rig'],
  T31: ['tool'],
  T38: [],
};
