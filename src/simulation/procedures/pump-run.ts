import type { Procedure } from '../procedure.ts';

export interface PumpRunSettings {
  readonly restS: number;
  readonly referenceS: number;
  readonly tankS: number;
  readonly purgeOpenS: number;
  readonly referenceAgainS: number;
}

/** Common practice, no source: reference about a minute, tank 5 to 15 min. */
export const PUMP_RUN: PumpRunSettings = {
  restS: 10,
  referenceS: 60,
  tankS: 420,
  purgeOpenS: 20,
  referenceAgainS: 60,
};

/**
 * Pump module: air pressure, reference, tank, purge opened (must collapse), reference again.
 *
 * @param settings what differs from PUMP_RUN
 * @returns the procedure
 */
export function pumpRun(settings: Partial<PumpRunSettings> = {}): Procedure {
  const s = { ...PUMP_RUN, ...settings };
  return {
    kind: 'pump-run',
    words: 'pump module: reference orifice against tank',
    steps: [
      {
        phase: 'rest',
        engineRunning: false,
        longestS: s.restS,
        commands: { pumpOn: 0, changeoverToTank: 0, purgeDuty: 0 },
      },
      { phase: 'reference', engineRunning: false, longestS: s.referenceS, commands: { pumpOn: 1 } },
      { phase: 'tank-pump', engineRunning: false, longestS: s.tankS, commands: { changeoverToTank: 1 } },
      { phase: 'release', engineRunning: false, longestS: s.purgeOpenS, commands: { purgeDuty: 1 } },
      {
        phase: 'reference',
        engineRunning: false,
        longestS: s.referenceAgainS,
        commands: { purgeDuty: 0, changeoverToTank: 0 },
      },
      { phase: 'rest', engineRunning: false, longestS: s.restS, commands: { pumpOn: 0 } },
    ],
  };
}
