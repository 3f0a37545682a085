import { effectiveAreaFromDiameter } from '../../physics/equivalent-diameter.ts';
import type { Actuation, OrificePassage } from '../network.ts';
import type { PartId } from '../parts.ts';

/**
 * A hole of fixed size as a passage.
 *
 * Valid: diameter >= 0.
 * Source: equivalent diameter, discharge coefficient 0.61.
 * @param id name of the passage
 * @param part the part it belongs to
 * @param from space or boundary on one side
 * @param to space or boundary on the other
 * @param diameterM equivalent diameter [m]
 * @returns the passage
 */
export function hole(id: string, part: PartId, from: string, to: string, diameterM: number): OrificePassage {
  const area = effectiveAreaFromDiameter(diameterM);
  return { kind: 'orifice', id, part, from, to, openAreaM2: area, shutAreaM2: area };
}

/**
 * A valve between its open and its shut size, moved by a command.
 *
 * Valid: diameters >= 0.
 * Source: equivalent diameter, discharge coefficient 0.61.
 * @param id name of the passage
 * @param part the part it belongs to
 * @param from space or boundary on one side
 * @param to space or boundary on the other
 * @param openDiameterM equivalent diameter when open [m]
 * @param shutDiameterM equivalent diameter of what passes when shut [m]
 * @param actuation the command, and whether it opens or shuts the valve
 * @returns the passage
 */
export function valve(
  id: string,
  part: PartId,
  from: string,
  to: string,
  openDiameterM: number,
  shutDiameterM: number,
  actuation: Actuation,
): OrificePassage {
  return {
    kind: 'orifice',
    id,
    part,
    from,
    to,
    openAreaM2: effectiveAreaFromDiameter(Math.max(openDiameterM, shutDiameterM)),
    shutAreaM2: effectiveAreaFromDiameter(shutDiameterM),
    actuation,
  };
}
