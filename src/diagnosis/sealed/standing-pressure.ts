/**
 * What the pressure says that a shut tank holds when the recording starts: hours of warming or cooling went before it, which
 * a sound tank kept and a leaking one did not.
 */
import type { SealedCauseId } from './causes.ts';
import { initialGauge } from './quantities.ts';

/** Standing pressures of sound tanks, -8 to +30 kPa (common practice, no source), as a normal spread [Pa]. */
const KEPT_SD_PA = 9000;
/** Just vented, or nothing warmed or cooled: near ambient [Pa]. Judgement. */
const NEAR_SD_PA = 150;
/** Share of sound tanks near ambient when a technician measures: after a release, or without a swing. Judgement. */
const SOUND_NEAR = 0.4;
/** Leaking tanks are near ambient unless the leak is small against the warming, or the tank was just shut. Judgement. */
const LEAKING_NEAR = 0.85;

/** Causes that empty the standing pressure. */
const LOSES: readonly SealedCauseId[] = ['leak', 'gross_leak', 'isolation_leak'];

const normal = (x: number, sd: number) => Math.exp(-0.5 * (x / sd) ** 2) / sd;

/** ln density of the tank's gauge pressure at the start, up to a constant. */
export function standingLogDensity(id: SealedCauseId, quantities: Float64Array): number {
  const p = initialGauge(quantities);
  const near = LOSES.includes(id) ? LEAKING_NEAR : SOUND_NEAR;
  return Math.log(near * normal(p, NEAR_SD_PA) + (1 - near) * normal(p, KEPT_SD_PA));
}
