/** Diameters of holes in the unit chosen; the finding gives them in millimetres. */
import type { Interval } from '../../diagnosis/finding.ts';
import { useUnits } from '../units/units.ts';

export const M_PER_MM = 1e-3;

export interface DiameterWords {
  readonly diameter: (mm: number) => string;
  readonly interval: (size: Interval) => string;
}

export function useDiameter(): DiameterWords {
  const units = useUnits();
  return {
    diameter: (mm) => units.print('length', mm * M_PER_MM),
    interval: ({ median, lo90, hi90 }) =>
      units.printInterval('length', median * M_PER_MM, lo90 * M_PER_MM, hi90 * M_PER_MM),
  };
}
