/** Work that several steps share: done once, it serves all that need it. */
import type { Figure } from './figure.ts';

export const SETUPS = ['lift', 'cool', 'rig', 'tool', 'warm', 'tank lowered'] as const;
export type SetupId = (typeof SETUPS)[number];

/**
 * Minutes of each set-up. Judgement: lift 5; cooling down is waiting, an hour that costs the shop a tenth of it; adaptor,
 * inert gas, regulator and a zero against a blank 10; a tool that commands valves 4; engine warm at idle 5; lowering a tank
 * and putting it back 90 (of the 2 to 5 h of common practice).
 */
const MINUTES: Readonly<Record<SetupId, number>> = {
  lift: 5,
  cool: 6,
  rig: 10,
  tool: 4,
  warm: 5,
  'tank lowered': 90,
};

export const setupKey = (id: SetupId): string => `setup.${id}.minutes`;
export const SETUP_FIGURES: readonly Figure[] = SETUPS.map((id) => ({
  key: setupKey(id),
  value: MINUTES[id],
  mark: 'judgement',
  unit: 'min',
  least: 0,
  most: 600,
}));

export const setupBits = (ids: readonly SetupId[]): number =>
  ids.reduce((bits, id) => bits | (1 << SETUPS.indexOf(id)), 0);

/** Ways in which a test's own set-up fails and then looks like a fault. Each is a hypothesis of its own. */
export const SETUP_FAULTS = ['adaptor leaks', 'clamp leaks', 'valve not energised', 'gauge reads wrong'] as const;
export type SetupFaultId = (typeof SETUP_FAULTS)[number];

/** Of jobs, how often each is so; judgement within the 3 to 10 % of the trade. */
const FAULT_SHARE: Readonly<Record<SetupFaultId, number>> = {
  'adaptor leaks': 0.05,
  'clamp leaks': 0.06,
  'valve not energised': 0.05,
  'gauge reads wrong': 0.03,
};
export const setupFaultKey = (id: SetupFaultId): string => `set-up fault.${id}`;
export const SETUP_FAULT_FIGURES: readonly Figure[] = SETUP_FAULTS.map((id) => ({
  key: setupFaultKey(id),
  value: FAULT_SHARE[id],
  mark: 'judgement',
  unit: 'probability',
  least: 0,
  most: 0.5,
}));
