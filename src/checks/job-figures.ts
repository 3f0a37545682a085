/** The planner's figures for one job: the shop's own, and what is known of the size of the hole. */
import type { Interval } from '../diagnosis/finding.ts';
import { CHECKS } from './catalogue/all.ts';
import type { Changes } from './figure.ts';
import { checkKey, figureValues } from './figures.ts';
import { atMost, sizeBelief } from './proof/size-belief.ts';

/**
 * A check that sees small holes less often counts by how likely the hole is that small. Of a hole of no known size the
 * catalogue's sensitivity is the mean.
 *
 * @param changes figures that the shop has changed
 * @param holeMm the finding's equivalent diameter; absent where it sizes no hole
 */
export function jobFigures(changes: Changes, holeMm: Interval | undefined): (key: string) => number {
  const figure = figureValues(changes);
  if (holeMm === undefined) return figure;
  const size = sizeBelief(holeMm);
  const sized = new Map(
    CHECKS.flatMap(({ id, smallHoles }) => {
      if (smallHoles === undefined) return [];
      const key = checkKey(id, 'sensitivity');
      const isSmall = atMost(size, smallHoles.belowMm);
      const usual = figure(key);
      return [[key, usual + isSmall * (Math.min(usual, smallHoles.sensitivity) - usual)] as const];
    }),
  );
  return (key) => sized.get(key) ?? figure(key);
}
