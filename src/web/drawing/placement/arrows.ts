import type { LeakPlace } from '../../../system/parameters.ts';
import { lengthOf, type Point, pointAlong } from './geometry.ts';

const FILLER: readonly LeakPlace[] = ['cap', 'neck', 'fillerHose'];
const TOLD = ['vapourLine', 'purge', 'vent', 'pump', 'filler', 'manifoldCheck', 'ejectorCheck'];

/** Passages whose flow is told by a number, most telling first: a hole where there is one; those between carry the same. */
export function toldPassages(hole: LeakPlace | undefined): readonly string[] {
  if (hole === undefined) return TOLD;
  // A hole in the filler has its arrow where the open filler has its own.
  return [`leak.${hole}`, ...TOLD.filter((passage) => passage !== 'filler' || !FILLER.includes(hole))];
}

/** Where the arrow of a way stands that does not move. */
export const arrowOf = (points: readonly Point[]): Point & { readonly angle: number } =>
  pointAlong(points, lengthOf(points) * 0.62);
