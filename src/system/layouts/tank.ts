import { effectiveAreaFromDiameter } from '../../physics/equivalent-diameter.ts';
import { vapourMolarMass } from '../../physics/fuel-vapour.ts';
import type { Passage, TankSpace } from '../network.ts';
import type { SystemParameters } from '../parameters.ts';
import { hole, valve } from './hole.ts';

/**
 * A tank, or one lobe of it: `share` of shell, surface and wall.
 *
 * Valid: 0 < share <= 1.
 * Source: none, it only carries parameters over.
 * @param p parameters
 * @param id name of the space
 * @param share share of the tank [-]
 * @param fillFraction share of this lobe filled with fuel [-]
 * @param neck whether the filler neck belongs to it
 * @returns the space
 */
export function tankSpace(
  p: SystemParameters,
  id: string,
  share: number,
  fillFraction: number,
  neck: boolean,
): TankSpace {
  const { tank, fuel } = p;
  return {
    kind: 'tank',
    id,
    part: 'tankShell',
    shellVolumeM3: share * tank.shellVolumeM3,
    neckVolumeM3: neck ? tank.neckVolumeM3 : 0,
    fillFraction,
    fuel: {
      reidVapourPressurePa: fuel.reidVapourPressurePa,
      ethanolVolumeFraction: fuel.ethanolVolumeFraction,
      densityKgPerM3: fuel.densityKgPerM3,
      heatCapacityJPerKgK: fuel.heatCapacityJPerKgK,
      vapourMolarMassKgPerMol: vapourMolarMass(fuel.reidVapourPressurePa),
      vapourPressureFactor: fuel.vapourPressureFactor,
    },
    surfaceAreaM2: share * tank.surfaceAreaM2,
    massTransferMPerS: tank.massTransferMPerS,
    massTransferFillingMPerS: tank.massTransferFillingMPerS,
    gasToWallWPerK: share * tank.gasToWallWPerK,
    gasToFuelWPerK: share * tank.gasToFuelWPerK,
    fuelToAmbientWPerK: share * tank.fuelToAmbientWPerK,
    shellHeatCapacityJPerK: share * tank.shellHeatCapacityJPerK,
  };
}

/**
 * What joins the tank to its vapour line, its filler and, by leaks and relief, to ambient.
 *
 * Valid: a network that has the spaces `tank` and `vapourLine`.
 * Source: none, it only carries parameters over.
 * @param p parameters
 * @param sealed whether the tank holds pressure by design (its relief is set higher)
 * @returns passages
 */
export function tankPassages(p: SystemParameters, sealed: boolean): Passage[] {
  const { tank, tankVent, filler, leakDiametersM: leaks, isolation } = p;
  const closure = filler.closure === 'capped' ? 'cap' : 'fillerFlap';
  const limitDiameter = tankVent.fillLimitStuck === 'shut' ? 0 : tankVent.fillLimitDiameterM;
  return [
    tankVent.fillLimitStuck === undefined
      ? valve('fillLimitValve', 'fillLimitValve', 'tank', 'vapourLine', limitDiameter, 0, {
          command: 'fillLimitShut',
          opens: false,
        })
      : hole('fillLimitValve', 'fillLimitValve', 'tank', 'vapourLine', limitDiameter),
    hole('rolloverValve', 'rolloverValve', 'tank', 'vapourLine', tankVent.rolloverDiameterM),
    valve('filler', closure, 'tank', 'ambient', filler.openDiameterM, 0, { command: 'fillerOpen', opens: true }),
    hole('leak.cap', closure, 'tank', 'ambient', leaks.cap),
    hole('leak.neck', 'fillerNeck', 'tank', 'ambient', leaks.neck),
    hole('leak.fillerHose', 'fillerHose', 'tank', 'ambient', leaks.fillerHose),
    hole('leak.senderSeal', 'senderSeal', 'tank', 'ambient', leaks.senderSeal),
    hole('leak.tankTop', 'tankShell', 'tank', 'ambient', leaks.tankTop),
    {
      kind: 'relief',
      id: 'relief',
      part: closure,
      from: 'tank',
      to: 'ambient',
      pressureSettingPa: sealed ? isolation.reliefPressurePa : tank.reliefPressurePa,
      vacuumSettingPa: sealed ? isolation.reliefVacuumPa : tank.reliefVacuumPa,
      openingSpanPa: tank.reliefSpanPa,
      openAreaM2: effectiveAreaFromDiameter(tank.reliefDiameterM),
      shutAreaM2: 0,
    },
  ];
}
