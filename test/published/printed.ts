import { expect } from 'vitest';

/**
 * Expects a value to round to a printed number: within half a unit of its last printed decimal,
 * or within `units` of it where the print itself was computed from rounded inputs.
 */
export function expectPrinted(actual: number | undefined, printed: string, units = 0.5): void {
  const decimals = /\.(\d+)/.exec(printed)?.[1]?.length ?? 0;
  const exponent = Number(/e([+-]?\d+)$/i.exec(printed)?.[1] ?? 0);
  const tolerance = units * 10 ** (exponent - decimals) * (1 + 1e-6);
  expect(actual).toBeTypeOf('number');
  const difference = Math.abs((actual as number) - Number(printed));
  expect(difference, `${actual} is not ${printed} within ${tolerance}`).toBeLessThanOrEqual(tolerance);
}

/** Kelvin of degrees Fahrenheit, written out so that no test uses the converter under test. */
export const fahrenheit = (degrees: number): number => (degrees + 459.67) / 1.8;

/** Kelvin of degrees Celsius. */
export const celsius = (degrees: number): number => degrees + 273.15;

/** Pascals in a pound per square inch. Source: NIST SP 811 B.8. */
export const PSI = 6894.757293;

/** Cubic metres in a US gallon. Source: NIST SP 811 B.8. */
export const GALLON = 3.785411784e-3;

/** Effective area of a round hole, m2. */
export const area = (diameterMm: number, coefficient: number): number =>
  (coefficient * Math.PI * (diameterMm * 1e-3) ** 2) / 4;

/** Kilograms per second as grams per minute. */
export const gramsPerMinute = (kgPerS: number): number => kgPerS * 60e3;

/** Kilograms per second of a gas as litres per minute at 20 degC and one atmosphere. */
export const litresPerMinute = (kgPerS: number, molarMass: number): number =>
  (kgPerS / ((101325 * molarMass) / (8.314462618 * 293.15))) * 60e3;

/** Specific gas constant of dry air, J/(kg K). Source: 8.314462618 / 0.0289647. */
export const R_AIR = 287.055;
