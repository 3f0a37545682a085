import type { Procedure, Step } from '../procedure.ts';

export interface PurgeDriveSettings {
  readonly idleS: number;
  readonly purgeS: number;
  readonly cycles: number;
  readonly duty: number;
}

/** Common practice, no source: purge in turns with rests for the mixture to be learned. */
export const PURGE_DRIVE: PurgeDriveSettings = { idleS: 20, purgeS: 60, cycles: 3, duty: 0.5 };

/**
 * Driving with the vent open: rests without purge, and purge in steps of duty.
 *
 * @param settings what differs from PURGE_DRIVE
 * @returns the procedure
 */
export function purgeDrive(settings: Partial<PurgeDriveSettings> = {}): Procedure {
  const s = { ...PURGE_DRIVE, ...settings };
  const steps: Step[] = [];
  for (let k = 0; k < s.cycles; k++) {
    const duty = (s.duty * (k + 1)) / s.cycles;
    steps.push({
      phase: 'idle',
      engineRunning: true,
      longestS: s.idleS,
      commands: { purgeDuty: 0, ventClosed: 0, enginePumpOn: 1 },
    });
    steps.push({ phase: 'purge', engineRunning: true, longestS: s.purgeS, commands: { purgeDuty: duty } });
  }
  return { kind: 'purge-drive', words: 'purge while driving, vent open', steps };
}

/**
 * Boosted engines: purge at low load, purge under boost, then boost with the vent shut.
 *
 * @param lowLoadS length of the purge at low load [s]
 * @param boostS length of the purge under boost [s]
 * @param sealedS length of the boost with the vent shut [s]
 * @param duty purge duty, 0 to 1
 * @returns the procedure
 */
export function boostDrive(lowLoadS: number, boostS: number, sealedS: number, duty: number): Procedure {
  return {
    kind: 'purge-drive',
    words: 'purge at low load, under boost, and under boost with the vent shut',
    steps: [
      { phase: 'purge', engineRunning: true, longestS: lowLoadS, commands: { purgeDuty: duty, ventClosed: 0 } },
      { phase: 'purge', engineRunning: true, longestS: boostS, commands: { purgeDuty: duty } },
      { phase: 'sealed', engineRunning: true, longestS: sealedS, commands: { ventClosed: 1 } },
      { phase: 'idle', engineRunning: true, longestS: 10, commands: { purgeDuty: 0, ventClosed: 0 } },
    ],
  };
}
