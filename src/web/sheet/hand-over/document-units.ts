import type { Units } from '../../../server/contract/hand-over.ts';
import type { UnitChoice } from '../../units/units.ts';

/** The units of the pages, as a document asks for them. */
export const documentUnits = ({ pressure, length, temperature }: UnitChoice): Units => ({
  pressure,
  length,
  temperature: temperature === '°F' ? 'degF' : 'degC',
});
