import { canisterPassages, canisterSpaces } from './canister.ts';
import { hole } from './hole.ts';
import type { Layout } from './layout.ts';
import { pressureSensor } from './layout.ts';
import { tankPassages, tankSpace } from './tank.ts';
import { purgeValve, ventValvePassages } from './vent.ts';

/** Two lobes over a tunnel: fuel runs over the weir, a jet pump lifts it back, a crossover vent joins the gas. */
export const SADDLE_TANK: Layout = {
  id: 'saddle-tank',
  words: 'saddle tank',
  build: (p) => {
    const { saddle, tank } = p;
    const passiveFill = saddle.passiveFillFraction ?? tank.fillFraction;
    return {
      spaces: [
        tankSpace(p, 'tank', 1 - saddle.passiveShare, tank.fillFraction, true),
        tankSpace(p, 'passiveLobe', saddle.passiveShare, passiveFill, false),
        ...canisterSpaces(p),
      ],
      passages: [
        ...tankPassages(p, false),
        hole('crossover', 'crossover', 'passiveLobe', 'tank', saddle.crossoverDiameterM),
        ...canisterPassages(p, false),
        ...ventValvePassages(p),
        purgeValve(p, 'manifold'),
      ],
      weirs: [
        {
          between: ['tank', 'passiveLobe'],
          heightFraction: saddle.weirHeightFraction,
          flowM3PerS: saddle.weirFlowM3PerS,
        },
      ],
      transferPumps: [
        {
          from: 'passiveLobe',
          to: 'tank',
          flowM3PerS: saddle.transferFlowM3PerS,
          unusableFraction: saddle.unusableFraction,
          command: 'enginePumpOn',
        },
      ],
      sensors: [pressureSensor(p, 'tankPressure', 'tank')],
    };
  },
};
