import type { LeakPlace } from '../../../system/parameters.ts';
import { lengthOf, type Point, pointAlong } from './geometry.ts';

/** Passages whose flow is told by a number; those between carry the same. A hole only where one is. */
export function isTold(passage: string, hole: LeakPlace | undefined): boolean {
  if (passage.startsWith('leak.')) return hole !== undefined && passage === `leak.${hole}`;
  return ['purge', 'vapourLine', 'vent', 'pump', 'filler', 'manifoldCheck', 'ejectorCheck'].includes(passage);
}

/** Where the arrow of a way stands that does not move. */
export const arrowOf = (points: readonly Point[]): Point & { readonly angle: number } =>
  pointAlong(points, lengthOf(points) * 0.62);
