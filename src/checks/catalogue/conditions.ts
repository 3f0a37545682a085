/** What a size measured by hand depends on besides the hole; the proof holds before and after against each other by it. */
import type { NumberField } from '../check.ts';

const TEMPERATURE = { quantity: 'temperature', unit: '°C', least: 233.15, most: 343.15, optional: true } as const;

/** Asked for with every size of the whole system. They do not change what the numbers mean, hence optional. */
export const CONDITIONS: readonly NumberField[] = [
  { id: 'fuel temperature', ...TEMPERATURE },
  { id: 'ambient temperature', ...TEMPERATURE },
  { id: 'fuel level', quantity: 'fraction', unit: '%', least: 0, most: 1, optional: true },
];
