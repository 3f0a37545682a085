import { canisterPassages, canisterSpaces } from './canister.ts';
import type { Layout } from './layout.ts';
import { pressureSensor } from './layout.ts';
import { tankPassages, tankSpace } from './tank.ts';
import { purgeValve, ventValvePassages } from './vent.ts';

/** The engine's manifold draws the vacuum through the purge valve; vent valve at the canister. */
export const ENGINE_VACUUM: Layout = {
  id: 'engine-vacuum',
  words: 'engine-vacuum draw',
  build: (p) => ({
    spaces: [tankSpace(p, 'tank', 1, p.tank.fillFraction, true), ...canisterSpaces(p)],
    passages: [
      ...tankPassages(p, false),
      ...canisterPassages(p, false),
      ...ventValvePassages(p),
      purgeValve(p, 'manifold'),
    ],
    sensors: [pressureSensor(p, 'tankPressure', 'tank')],
  }),
};

/** The same parts; the test runs with the engine off, on what heat and cold do to the tank. */
export const ENGINE_OFF: Layout = { ...ENGINE_VACUUM, id: 'engine-off', words: 'engine-off natural vacuum' };
