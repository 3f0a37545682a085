/** Root causes as faults of the simulator, in some sizes each with its share. Shares and sizes are judgement. */
import type { Fault } from '../../system/faults/fault.ts';
import type { LeakPlace } from '../../system/parameters.ts';
import type { RootCauseId } from '../root-causes.ts';

export interface FaultShare {
  readonly fault: Fault | undefined;
  readonly share: number;
}

const leak =
  (place: LeakPlace) =>
  (sizesM: readonly number[]): FaultShare[] =>
    sizesM.map((size) => ({ fault: { kind: 'leak', place, size }, share: 1 / sizesM.length }));
const each = (...faults: readonly Fault[]): FaultShare[] =>
  faults.map((fault) => ({ fault, share: 1 / faults.length }));
const sized =
  (kind: string) =>
  (sizesM: readonly number[]): FaultShare[] =>
    sizesM.map((size) => ({ fault: { kind, size }, share: 1 / sizesM.length }));

type Faults = (sizesM: readonly number[]) => FaultShare[];

/** Absent: nothing that a pressure recording could show; it looks like a sound car. */
const FAULTS: Readonly<Partial<Record<RootCauseId, Faults>>> = {
  F01: leak('cap'),
  F02p: leak('neck'),
  F02h: leak('fillerHose'),
  F03: sized('purge-seeping'),
  F04: () => each({ kind: 'purge-stuck-shut' }),
  F05: sized('vent-not-sealing'),
  F06v: () => each({ kind: 'vent-stuck-shut' }),
  F06f: () => each({ kind: 'vent-choked' }),
  F07: leak('canister'),
  F09v: leak('vapourLine'),
  F09p: leak('purgeLine'),
  F10: leak('senderSeal'),
  F11: leak('tankTop'),
  F12f: () => each({ kind: 'fill-limit-stuck-shut' }),
  F13: () => each({ kind: 'vapour-line-blocked' }),
  F14: () => each({ kind: 'sensor-offset' }, { kind: 'sensor-gain' }, { kind: 'sensor-stuck' }),
  F15p: () => each({ kind: 'purge-circuit-open' }),
  F15v: () => each({ kind: 'vent-circuit-open' }),
};

/** @param sizesM sizes of a hole that are still possible [m] */
export const faultsOf = (cause: RootCauseId, sizesM: readonly number[]): readonly FaultShare[] =>
  FAULTS[cause]?.(sizesM) ?? [{ fault: undefined, share: 1 }];
