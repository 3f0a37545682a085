import type { ReactNode } from 'react';
import type { Interval } from '../../diagnosis/finding.ts';
import { useUnits } from '../units/units.ts';

const M_PER_MM = 1e-3;

/** A hole's equivalent diameter, "0.62 mm (0.56 to 0.69)". */
export function Diameter({ size }: { readonly size: Interval }): ReactNode {
  const units = useUnits();
  return (
    <span>{units.printInterval('length', size.median * M_PER_MM, size.lo90 * M_PER_MM, size.hi90 * M_PER_MM)}</span>
  );
}
