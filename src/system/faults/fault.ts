import type { LayoutId } from '../car.ts';
import type { LeakPlace, SystemParameters } from '../parameters.ts';
import type { PartId } from '../parts.ts';

/** A fault of one car: what, where, how large. Size and place may be left to the catalogue's typical values. */
export interface Fault {
  readonly kind: string;
  readonly place?: LeakPlace;
  /** In the unit that the catalogue states for the kind. */
  readonly size?: number;
}

export interface FaultSize {
  readonly unit: 'm' | 'Pa' | 's' | 'K' | '1';
  readonly meaning: string;
  readonly low: number;
  readonly typical: number;
  readonly high: number;
}

/** A kind of fault: how it changes the parameters of its part. Equations never change. */
export interface FaultKind {
  readonly kind: string;
  /** Family of the trade's list, F01 to F19. */
  readonly family: string;
  readonly words: string;
  readonly part: PartId;
  readonly size?: FaultSize;
  /** Where it can sit; absent = one place only. */
  readonly places?: readonly LeakPlace[];
  /** Layouts that have the part; absent = all. */
  readonly layouts?: readonly LayoutId[];
  /** Writes the change into `p`, a copy of the nominal parameters. */
  apply(p: SystemParameters, size: number, place: LeakPlace): void;
}

/**
 * Size of a hole from none to a hose's bore.
 *
 * Valid: any.
 * Source: trade practice, 0.010 to 0.150 in.
 * @param meaning what the diameter is of
 * @param typical value where none is given [m]
 * @returns the size in metres
 */
export function diameter(meaning: string, typical: number): FaultSize {
  return { unit: 'm', meaning: `${meaning}, equivalent diameter`, low: 0.05e-3, typical, high: 12e-3 };
}

/**
 * Size of a fault as a share.
 *
 * Valid: 0 to 1.
 * Source: none.
 * @param meaning what the share is of
 * @param typical value where none is given [-]
 * @returns the size as a fraction
 */
export function share(meaning: string, typical: number): FaultSize {
  return { unit: '1', meaning, low: 0, typical, high: 1 };
}
