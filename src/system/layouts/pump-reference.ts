import { canisterPassages, canisterSpaces } from './canister.ts';
import type { Layout } from './layout.ts';
import { pressureSensor } from './layout.ts';
import { tankPassages, tankSpace } from './tank.ts';
import { pumpModulePassages, pumpModuleSpace, purgeValve } from './vent.ts';

/** A pump module with a reference orifice stands in for the vent valve. */
export const PUMP_REFERENCE: Layout = {
  id: 'pump-reference',
  words: 'pump with reference orifice',
  build: (p) => ({
    spaces: [tankSpace(p, 'tank', 1, p.tank.fillFraction, true), ...canisterSpaces(p), pumpModuleSpace(p)],
    passages: [
      ...tankPassages(p, false),
      ...canisterPassages(p, false),
      ...pumpModulePassages(p),
      purgeValve(p, 'manifold'),
    ],
    sensors: [pressureSensor(p, 'pumpPressure', 'pumpModule'), pressureSensor(p, 'tankPressure', 'tank')],
  }),
};
