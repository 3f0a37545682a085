import { AUTOMOTIVE_CARBON } from '../../../physics/carbon.ts';
import type { RunView } from './run-view.ts';

/** Air at 20 °C and one atmosphere, kg/m3: flows are said as air. Source: ideal gas. */
export const AIR_KG_PER_M3 = 1.204;

/** Vapour held by the carbon and the most it would hold, kg. */
export function carbonMass(view: RunView): { readonly heldKg: number; readonly mostKg: number } {
  let heldKg = 0;
  let mostKg = 0;
  for (const space of view.network.spaces) {
    if (space.kind !== 'bed') continue;
    const most = space.carbonKg * AUTOMOTIVE_CARBON.saturationKgPerKg;
    mostKg += most;
    heldKg += most * (view.value(`${space.id}.loading`) ?? 0);
  }
  return { heldKg, mostKg };
}

/** Largest gauge pressure of any space of the car (the engine's side not counted), either way, over the whole run. */
export function largestGaugePa(view: RunView): number {
  let most = 0;
  for (const space of view.network.spaces) {
    if (space.id === 'tee') continue;
    for (const value of view.run.traces[`${space.id}.gaugePa`] ?? []) most = Math.max(most, Math.abs(value));
  }
  return most;
}
