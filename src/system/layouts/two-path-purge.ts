import { effectiveAreaFromDiameter } from '../../physics/equivalent-diameter.ts';
import type { CheckPassage } from '../network.ts';
import type { SystemParameters } from '../parameters.ts';
import type { PartId } from '../parts.ts';
import { canisterPassages, canisterSpaces } from './canister.ts';
import type { Layout } from './layout.ts';
import { pressureSensor } from './layout.ts';
import { tankPassages, tankSpace } from './tank.ts';
import { purgeValve, ventValvePassages } from './vent.ts';

function check(p: SystemParameters, id: string, part: PartId, to: string, openM: number, shutM: number): CheckPassage {
  return {
    kind: 'check',
    id,
    part,
    from: 'tee',
    to,
    crackingPa: p.boost.checkCrackingPa,
    fullyOpenPa: p.boost.checkFullyOpenPa,
    openAreaM2: effectiveAreaFromDiameter(Math.max(openM, shutM)),
    shutAreaM2: effectiveAreaFromDiameter(shutM),
  };
}

/** A boosted engine: behind the purge valve one path to the manifold and one to an ejector, each with a check valve. */
export const TWO_PATH_PURGE: Layout = {
  id: 'two-path-purge',
  words: 'two-path purge of a boosted engine',
  build: (p) => {
    const b = p.boost;
    return {
      spaces: [
        tankSpace(p, 'tank', 1, p.tank.fillFraction, true),
        ...canisterSpaces(p),
        { kind: 'gas', id: 'tee', part: 'purgeLine', volumeM3: b.teeVolumeM3 },
      ],
      passages: [
        ...tankPassages(p, false),
        ...canisterPassages(p, false),
        ...ventValvePassages(p),
        purgeValve(p, 'tee'),
        check(p, 'manifoldCheck', 'manifoldCheckValve', 'manifold', b.checkDiameterM, b.manifoldCheckShutDiameterM),
        check(p, 'ejectorCheck', 'ejectorCheckValve', 'ejector', b.ejectorCheckDiameterM, b.ejectorCheckShutDiameterM),
      ],
      sensors: [pressureSensor(p, 'tankPressure', 'tank')],
    };
  },
};
