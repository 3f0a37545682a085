import { ergunResistance } from '../../physics/bed.ts';
import { P_ATM, REFERENCE_TEMPERATURE_K, SPECIFIC_GAS_CONSTANT_AIR, VISCOSITY_AIR } from '../../physics/constants.ts';
import { gasDensity } from '../../physics/gas.ts';
import type { Passage, Space } from '../network.ts';
import type { SystemParameters } from '../parameters.ts';
import { hole, valve } from './hole.ts';

/**
 * Vapour line, canister head (ports and purge line), bed cells from tank end to vent end, and vent hose.
 *
 * Valid: at least one cell.
 * Source: none, it only carries parameters over.
 * @param p parameters
 * @returns spaces named vapourLine, head, bed1.., ventSide
 */
export function canisterSpaces(p: SystemParameters): Space[] {
  const { canister: c, tankVent, vent } = p;
  const cells = Array.from({ length: c.cells }, (_, i): Space => {
    const along = c.cells === 1 ? 0.5 : i / (c.cells - 1);
    return {
      kind: 'bed',
      id: `bed${i + 1}`,
      part: 'carbonBed',
      volumeM3: c.gasVolumeM3 / c.cells,
      carbonKg: (c.carbonKg * c.activeFraction) / c.cells,
      heatCapacityJPerK: c.heatCapacityJPerK / c.cells,
      toAmbientWPerK: c.toAmbientWPerK / c.cells,
      rateHz: c.rateHz,
      loadingFraction: c.loadingTankEnd + along * (c.loadingVentEnd - c.loadingTankEnd),
    };
  });
  return [
    { kind: 'gas', id: 'vapourLine', part: 'vapourLine', volumeM3: tankVent.lineVolumeM3 },
    { kind: 'gas', id: 'head', part: 'canister', volumeM3: c.headVolumeM3 },
    ...cells,
    { kind: 'gas', id: 'ventSide', part: 'ventValve', volumeM3: vent.volumeM3 },
  ];
}

/**
 * Passages along the canister: line, bed, and the leaks beside them.
 *
 * Valid: as canisterSpaces; resistance of the bed at one atmosphere and 20 degC, half a cell before the first and
 * behind the last cell.
 * Source: Ergun's equation.
 * @param p parameters
 * @param isolated whether an isolation valve sits in the vapour line
 * @returns passages
 */
export function canisterPassages(p: SystemParameters, isolated: boolean): Passage[] {
  const { canister: c, tankVent, isolation, leakDiametersM: leaks } = p;
  const density = gasDensity(P_ATM, REFERENCE_TEMPERATURE_K, SPECIFIC_GAS_CONSTANT_AIR);
  const whole = ergunResistance(c.bedLengthM, c.bedAreaM2, c.grainDiameterM, c.voidFraction, density, VISCOSITY_AIR);
  const names = ['head', ...Array.from({ length: c.cells }, (_, i) => `bed${i + 1}`), 'ventSide'];
  const bed = names.slice(1).map((to, i): Passage => {
    const share = (i === 0 || i === c.cells ? 0.5 : 1) / c.cells;
    return {
      kind: 'bed',
      id: `bed.${i + 1}`,
      part: 'carbonBed',
      from: names[i]!,
      to,
      linearPaSPerKg: whole.linearPaSPerKg * share * c.resistanceFactor,
      quadraticPaS2PerKg2: whole.quadraticPaS2PerKg2 * share * c.resistanceFactor,
    };
  });
  return [
    isolated
      ? valve(
          'vapourLine',
          'isolationValve',
          'vapourLine',
          'head',
          Math.min(isolation.openDiameterM, tankVent.lineDiameterM),
          Math.min(isolation.shutDiameterM, tankVent.lineDiameterM),
          { command: 'isolationOpen', opens: true },
        )
      : hole('vapourLine', 'vapourLine', 'vapourLine', 'head', tankVent.lineDiameterM),
    ...bed,
    hole('leak.vapourLine', 'vapourLine', 'vapourLine', 'ambient', leaks.vapourLine),
    hole('leak.canister', 'canister', `bed${Math.ceil(c.cells / 2)}`, 'ambient', leaks.canister),
    hole('leak.purgeLine', 'purgeLine', 'head', 'ambient', leaks.purgeLine),
    hole('leak.ventSide', 'ventValve', 'ventSide', 'ambient', leaks.ventSide),
  ];
}
