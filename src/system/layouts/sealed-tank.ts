import { SENSOR_MAX_GAUGE_PA, SENSOR_MIN_GAUGE_PA } from '../defaults.ts';
import { canisterPassages, canisterSpaces } from './canister.ts';
import type { Layout } from './layout.ts';
import { pressureSensor } from './layout.ts';
import { tankPassages, tankSpace } from './tank.ts';
import { purgeValve, ventValvePassages } from './vent.ts';

/** A tank that holds pressure behind an isolation valve; a second, narrow sensor at the canister. */
export const SEALED_TANK: Layout = {
  id: 'sealed-tank',
  words: 'sealed tank with isolation valve',
  build: (p) => ({
    spaces: [tankSpace(p, 'tank', 1, p.tank.fillFraction, true), ...canisterSpaces(p)],
    passages: [
      ...tankPassages(p, true),
      ...canisterPassages(p, true),
      ...ventValvePassages(p),
      purgeValve(p, 'manifold'),
    ],
    sensors: [
      pressureSensor(p, 'tankPressure', 'tank'),
      {
        ...pressureSensor(p, 'canisterPressure', 'head'),
        minGaugePa: SENSOR_MIN_GAUGE_PA,
        maxGaugePa: SENSOR_MAX_GAUGE_PA,
      },
    ],
  }),
};
