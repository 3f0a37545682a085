import type { Procedure } from '../procedure.ts';

export interface EngineOffSettings {
  readonly ventedS: number;
  readonly sealedS: number;
  /** Half-way the vent opens for so long and shuts again; 0 = never. */
  readonly reventS: number;
  readonly sealedAgainS: number;
  /** The module gives up beyond these readings, gauge Pa. */
  readonly passHighGaugePa: number;
  readonly passLowGaugePa: number;
}

/** Common practice, no source: up to 45 min after key-off; +1..+2.5 and -1..-2.5 inH2O. */
export const ENGINE_OFF: EngineOffSettings = {
  ventedS: 120,
  sealedS: 900,
  reventS: 60,
  sealedAgainS: 1620,
  passHighGaugePa: 620,
  passLowGaugePa: -620,
};

/**
 * Engine off: vented, sealed (pressure from heat), vented, sealed again (vacuum from cooling).
 *
 * @param settings what differs from ENGINE_OFF
 * @returns the procedure
 */
export function engineOff(settings: Partial<EngineOffSettings> = {}): Procedure {
  const s = { ...ENGINE_OFF, ...settings };
  const reading = { kind: 'reading', sensor: 'tankPressure' } as const;
  const ends = [
    { what: reading, is: 'above', value: s.passHighGaugePa, outcome: 'pressure target reached' },
    { what: reading, is: 'below', value: s.passLowGaugePa, outcome: 'vacuum target reached', endsProcedure: true },
  ] as const;
  return {
    kind: 'engine-off',
    words: 'engine-off natural pressure and vacuum',
    steps: [
      { phase: 'vented', engineRunning: false, longestS: s.ventedS, commands: { purgeDuty: 0, ventClosed: 0 } },
      { phase: 'sealed', engineRunning: false, longestS: s.sealedS, commands: { ventClosed: 1 }, endsWhen: ends },
      ...(s.reventS > 0
        ? ([
            { phase: 'vented', engineRunning: false, longestS: s.reventS, commands: { ventClosed: 0 } },
            {
              phase: 'sealed',
              engineRunning: false,
              longestS: s.sealedAgainS,
              commands: { ventClosed: 1 },
              endsWhen: ends,
            },
          ] as const)
        : []),
    ],
  };
}
