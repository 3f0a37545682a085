import { scaledDiurnalTemperature } from '../../physics/diurnal.ts';
import type { Series } from '../inputs.ts';
import type { Procedure } from '../procedure.ts';

/**
 * Parked over night and day: vent open (breathing through the canister) or sealed.
 *
 * @param hours how long [h]
 * @param sealed whether the vent valve is shut
 * @returns the procedure
 */
export function overnightSoak(hours: number, sealed: boolean): Procedure {
  return {
    kind: 'overnight-soak',
    words: sealed ? 'parked with the vent shut' : 'parked, breathing through the canister',
    steps: [
      {
        phase: sealed ? 'sealed' : 'vented',
        engineRunning: false,
        longestS: hours * 3600,
        commands: { purgeDuty: 0, ventClosed: sealed ? 1 : 0 },
      },
    ],
  };
}

/**
 * Ambient temperature of a day as a series with a point every hour.
 *
 * `startHour` 0 is the coldest hour of the regulated profile (its start in the morning), 9 the hottest.
 *
 * @param hours how long [h]
 * @param startHour hour of the profile at which it starts [h]
 * @param lowestK lowest temperature of the day [K]
 * @param highestK highest temperature of the day [K]
 * @returns ambient temperature over time
 */
export function diurnalSeries(hours: number, startHour: number, lowestK: number, highestK: number): Series {
  const timeS: number[] = [];
  const value: number[] = [];
  for (let h = 0; h <= Math.ceil(hours); h++) {
    timeS.push(h * 3600);
    value.push(scaledDiurnalTemperature((h + startHour) * 3600, lowestK, highestK));
  }
  return { timeS, value };
}
