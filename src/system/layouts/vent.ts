import { effectiveAreaFromDiameter } from '../../physics/equivalent-diameter.ts';
import { seriesDiameter } from '../../physics/series-diameter.ts';
import type { Passage, Space } from '../network.ts';
import type { SystemParameters } from '../parameters.ts';
import { hole, valve } from './hole.ts';

/**
 * A solenoid vent valve with its filter: open at rest, sealing when energised.
 *
 * Valid: a network with the space `ventSide`.
 * Source: orifices one after the other.
 * @param p parameters
 * @returns passages
 */
export function ventValvePassages(p: SystemParameters): Passage[] {
  const { vent } = p;
  return [
    valve(
      'vent',
      'ventValve',
      'ventSide',
      'ambient',
      seriesDiameter(vent.valveOpenDiameterM, vent.filterDiameterM),
      seriesDiameter(vent.valveShutDiameterM, vent.filterDiameterM),
      { command: 'ventClosed', opens: false },
    ),
  ];
}

/**
 * The gas space of a pump module.
 *
 * Valid: volume > 0.
 * Source: none, it only carries parameters over.
 * @param p parameters
 * @returns the space `pumpModule`
 */
export function pumpModuleSpace(p: SystemParameters): Space {
  return { kind: 'gas', id: 'pumpModule', part: 'pumpModule', volumeM3: p.pump.moduleVolumeM3 };
}

/**
 * A pump module in place of the vent valve: at rest the vent is open; the pump draws through the reference orifice,
 * or, with the change-over valve turned, on the canister and tank while the vent is shut.
 *
 * Valid: a network with the spaces `ventSide` and `pumpModule`.
 * Source: trade practice, pump with reference orifice.
 * @param p parameters
 * @returns passages
 */
export function pumpModulePassages(p: SystemParameters): Passage[] {
  const { vent, pump } = p;
  const openVent = seriesDiameter(vent.valveOpenDiameterM, vent.filterDiameterM);
  const shutVent = seriesDiameter(vent.valveShutDiameterM, vent.filterDiameterM);
  const turning = { command: 'changeoverToTank' } as const;
  return [
    pump.changeoverSticks
      ? hole('vent', 'changeoverValve', 'ventSide', 'ambient', openVent)
      : valve('vent', 'changeoverValve', 'ventSide', 'ambient', openVent, shutVent, { ...turning, opens: false }),
    pump.changeoverSticks
      ? hole('changeover', 'changeoverValve', 'ventSide', 'pumpModule', pump.changeoverShutDiameterM)
      : valve(
          'changeover',
          'changeoverValve',
          'ventSide',
          'pumpModule',
          pump.changeoverDiameterM,
          pump.changeoverShutDiameterM,
          { ...turning, opens: true },
        ),
    hole('referenceOrifice', 'referenceOrifice', 'ventSide', 'pumpModule', pump.orificeDiameterM),
    {
      kind: 'pump',
      id: 'pump',
      part: 'pumpModule',
      from: 'pumpModule',
      to: 'ambient',
      freeFlowM3PerS: pump.freeFlowM3PerS,
      stallPa: pump.stallPa,
      command: 'pumpOn',
    },
  ];
}

/**
 * The pulse-width purge valve between canister head and `to`.
 *
 * Valid: a network with the space `head`.
 * Source: equivalent diameter, discharge coefficient 0.61.
 * @param p parameters
 * @param to the engine's manifold, or the tee of a boosted engine
 * @returns the passage
 */
export function purgeValve(p: SystemParameters, to: string): Passage {
  const { purge } = p;
  const shut = Math.hypot(purge.shutDiameterM, purge.stuckOpenDiameterM);
  return {
    kind: 'orifice',
    id: 'purge',
    part: 'purgeValve',
    from: 'head',
    to,
    openAreaM2: effectiveAreaFromDiameter(Math.max(purge.openDiameterM, shut)),
    shutAreaM2: effectiveAreaFromDiameter(shut),
    actuation: { command: 'purgeDuty', opens: true },
    pulse: { frequencyHz: purge.frequencyHz, openDelayS: purge.openDelayS, closeDelayS: purge.closeDelayS },
  };
}
