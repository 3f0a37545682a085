/** What a sealed tank's recording cannot tell, whatever the fit says. */
import type { Recording } from '../../recording/recording.ts';
import { median } from '../likelihood/observations.ts';
import { readSeries, readSwitch } from '../single-run/switches.ts';

export type SealedLimit =
  | {
      /** The tank stood at ambient without a swing that would have moved it, and no vacuum was ever put on it. */
      readonly kind: 'tank-side-untested';
      readonly standingGaugePa: number;
      readonly temperatureSwingK: number;
    }
  /** The canister side was never shut under vacuum, or its pressure not recorded. */
  | { readonly kind: 'canister-side-untested' }
  /** The isolation valve was never commanded open, so what it does is unknown. */
  | { readonly kind: 'isolation-untested' };

/** Within this of ambient a standing pressure proves nothing: sensor zero and the last release [Pa], judgement. */
const NEAR_AMBIENT_PA = 400;
/** A sound tank moves by 2 kPa or so per kelvin, fuel vapour included: a swing of this shows [K], judgement. */
const TELLING_SWING_K = 1;
/** A vacuum that tests a side [Pa], judgement. */
const TESTING_PA = 100;

export function sealedLimits(recording: Recording): SealedLimit[] {
  const { timeS, channels } = recording;
  const tank = channels.tankPressureGaugePa;
  if (!tank) return [];
  const isolation = readSwitch(recording, 'isolationOpen', 0);
  const vent = readSwitch(recording, 'ventClosed', 0);
  const side = channels.canisterPressureGaugePa;
  const standing: number[] = [];
  let tankDrawn = false;
  let sideDrawn = false;
  timeS.forEach((t, i) => {
    const open = isolation.at(t) > 0.5;
    if (!open && Number.isFinite(tank[i]!) && (isolation.changesS[0] ?? Number.POSITIVE_INFINITY) > t) {
      standing.push(tank[i]!);
    }
    if (vent.at(t) <= 0.5) return;
    if (open && Math.abs(tank[i]!) > TESTING_PA) {
      tankDrawn = true;
      sideDrawn = true;
    }
    if (!open && side && Math.abs(side[i]!) > TESTING_PA) sideDrawn = true;
  });
  const limits: SealedLimit[] = [];
  const standingGaugePa = standing.length > 0 ? median(standing) : 0;
  const temperatureSwingK = swing(recording);
  const moved = standing.some((p) => Math.abs(p - standingGaugePa) > NEAR_AMBIENT_PA);
  const told = Math.abs(standingGaugePa) > NEAR_AMBIENT_PA || temperatureSwingK > TELLING_SWING_K || moved;
  if (!told && !tankDrawn) limits.push({ kind: 'tank-side-untested', standingGaugePa, temperatureSwingK });
  if (!sideDrawn) limits.push({ kind: 'canister-side-untested' });
  if (isolation.changesS.length === 0) limits.push({ kind: 'isolation-untested' });
  return limits;
}

/** Largest swing of fuel temperature, or of ambient where fuel is not recorded [K]. */
function swing(recording: Recording): number {
  const series = readSeries(recording, 'fuelTemperatureK') ?? readSeries(recording, 'ambientTemperatureK');
  if (!series) return 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const t of recording.timeS) {
    low = Math.min(low, series(t));
    high = Math.max(high, series(t));
  }
  return Math.max(0, high - low);
}
