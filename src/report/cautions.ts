/** Cautions that stand on every sheet. Common practice of the trade; figures carry their mark. */
import type { Car } from '../system/car.ts';

export const GENERAL_CAUTION =
  'Typical values only. The service information of this vehicle, the rules of your workplace and the fire, environmental ' +
  'and road-traffic law where you work come first wherever they differ from this sheet, and work that needs a licence is for those who hold it.';

export const STANDING_CAUTIONS: readonly string[] = [
  'If liquid fuel is leaking or you smell fuel strongly: stop, ventilate, keep ignition sources away. It is a fire hazard first and an emissions fault second.',
  'Open the filler slowly and let any hiss stop before you disconnect a line. Let a hot exhaust cool.',
  'Never put shop air or oxygen into a fuel system: tank vapour can become explosive. Use regulated inert gas and equipment made for the purpose.',
  'Do not exceed the test pressure and vacuum that the vehicle states; 3.5 kPa (14 inH2O) is a usual ceiling (common practice, no source), and plastic tanks buckle under less vacuum.',
  'Work in moving air, with a suitable extinguisher in reach, gloves and eye protection. Drain and support a tank before lowering it; two people.',
];

export const SEALED_TANK_CAUTION =
  'This car has a sealed tank that is meant to hold pressure: release it through the vehicle’s own refuelling request before opening a line, and isolate high voltage as the vehicle’s information says.';

export const cautionsFor = (car: Car): readonly string[] =>
  car.layout === 'sealed-tank' ? [SEALED_TANK_CAUTION, ...STANDING_CAUTIONS] : STANDING_CAUTIONS;
