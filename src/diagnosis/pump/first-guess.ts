/** Where the fits of a pump run start: the pump from its reference, the hole from the pressure at the end of the tank's turn. */
import { effectiveAreaFromDiameter } from '../../physics/equivalent-diameter.ts';
import { median } from '../likelihood/observations.ts';
import type { PumpRun } from './drive.ts';

export interface PumpGuess {
  readonly freeFlowM3PerS: number;
  readonly holeAreaM2: number;
}

/** Nominal reference orifice [m]; from memory. */
const ORIFICE_M = 0.5e-3;
/** Density of air on a mild day at sea level [kg/m3]; a starting point needs no better. */
const AIR_KG_PER_M3 = 1.19;
/** Readings nearer to zero than this say "no plateau" [Pa]. */
const LEAST_PA = 3;

/**
 * Orifice law and a straight pump line through the reference: Q0 (1 - p_r / S) = A_o sqrt(2 p_r / rho), and the same for
 * the hole at the tank's last pressure.
 *
 * @param run laid out pump run
 * @param stallPa pressure at which the pump's flow ends [Pa]
 * @returns undefined where reference or tank phase is missing
 */
export function guessPump(run: PumpRun, stallPa: number): PumpGuess | undefined {
  const { timeS, gaugePa } = run.channels[0]!.observations;
  const { pumpOn, toTank, duty } = run.commands;
  const reference: number[] = [];
  const tank: number[] = [];
  timeS.forEach((t, i) => {
    if (pumpOn.at(t) <= 0.5) return;
    if (toTank.at(t) <= 0.5) reference.push(Math.abs(gaugePa[i]!));
    else if (duty.at(t) <= 0) tank.push(Math.abs(gaugePa[i]!));
  });
  if (reference.length === 0 || tank.length === 0) return undefined;
  const atReference = Math.max(LEAST_PA, median(reference));
  const atEnd = Math.max(LEAST_PA, median(tank.slice(-Math.max(3, tank.length >> 3))));
  const stall = Math.max(stallPa, 1.05 * atReference, 1.02 * atEnd);
  const velocity = (p: number) => Math.sqrt((2 * p) / AIR_KG_PER_M3);
  const freeFlowM3PerS = (effectiveAreaFromDiameter(ORIFICE_M) * velocity(atReference)) / (1 - atReference / stall);
  return { freeFlowM3PerS, holeAreaM2: (freeFlowM3PerS * (1 - atEnd / stall)) / velocity(atEnd) };
}
