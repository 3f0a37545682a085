/** A unit as people print it: "cm3/min" as "cm³/min". What is no power of a length stays as it is. */
export const printedUnit = (unit: string): string =>
  unit.replace(/\b([dcm]?m)([23])\b/g, (_, length: string, power: string) => `${length}${power === '2' ? '²' : '³'}`);
