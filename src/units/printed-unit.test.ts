import { expect, test } from 'vitest';
import { printedUnit } from './printed-unit.ts';

test.each([
  ['cm3/min', 'cm³/min'],
  ['m3', 'm³'],
  ['mm2', 'mm²'],
  ['kPa/min', 'kPa/min'],
  ['inH2O', 'inH2O'],
])('%s is printed as %s', (unit, printed) => {
  expect(printedUnit(unit)).toBe(printed);
});
