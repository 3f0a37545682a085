/** What the nozzle's shut-offs say: at which level the last one came, and whether any came before the tank was full. */
import type { CauseId } from '../finding.ts';
import { FULL_LEVEL } from '../model/filling-plan.ts';
import type { Prepared } from '../prepare.ts';

/**
 * Level at a shut-off at full by gauge and litres: the valve's set point near 95 % of the tank, common practice, no source;
 * spread by gauge, tank tolerance and pump [-]. With the valve stuck open the liquid itself stops the nozzle, brim full.
 */
const LIMITED = { centre: FULL_LEVEL, sd: 0.05 };
const BRIM = { centre: 1.01, sd: 0.04 };
/** Chance of a shut-off well before full: by the station's nozzle or a held-back trigger, or by the car's blockage. Judgement. */
const EARLY_BY_CHANCE = 0.05;
/** The same for several in a row: a nozzle that keeps clicking off on a sound car is rare. Judgement. */
const REPEATED_BY_CHANCE = 0.01;
const EARLY_WHEN_BLOCKED: Readonly<Partial<Record<CauseId, number>>> = {
  vent_stuck_closed: 0.98,
  path_blocked: 0.98,
  vent_restricted: 0.75,
};

/** @param p a prepared recording; anything but a refuelling with a shut-off says nothing */
export function fillingLogDensity(p: Prepared, cause: CauseId): number {
  if (p.filling === undefined) return 0;
  const early = EARLY_WHEN_BLOCKED[cause] ?? (p.filling.earlyShutOffs > 1 ? REPEATED_BY_CHANCE : EARLY_BY_CHANCE);
  let log = Math.log(p.filling.earlyShutOffs > 0 ? early : 1 - early);
  if (p.filling.endLevel !== undefined) {
    const { centre, sd } = cause === 'fill_valve_stuck_open' ? BRIM : LIMITED;
    log += -0.5 * ((p.filling.endLevel - centre) / sd) ** 2 - Math.log(sd);
  }
  return log;
}
