/** Units as people print them. */

/**
 * A unit as people print it: "cm3/min" as "cm³/min".
 *
 * Valid: any text; what is no power of a length stays as it is.
 * Source: SI Brochure, 5.4.
 * @param unit symbol as the unit table spells it [-]
 * @returns the printed symbol [-]
 */
export const printedUnit = (unit: string): string =>
  unit.replace(/\b([dcm]?m)([23])\b/g, (_, length: string, power: string) => `${length}${power === '2' ? '²' : '³'}`);
