import type { Procedure } from '../procedure.ts';

export interface SealedHoldSettings {
  readonly holdS: number;
  readonly releaseS: number;
  readonly canisterTestS: number;
  readonly canisterDuty: number;
  readonly canisterTargetGaugePa: number;
  readonly commonS: number;
}

/** Common practice, no source: release within 5 to 20 s, then the canister side by itself. */
export const SEALED_HOLD: SealedHoldSettings = {
  holdS: 60,
  releaseS: 30,
  canisterTestS: 60,
  canisterDuty: 0.1,
  canisterTargetGaugePa: -1500,
  commonS: 60,
};

/**
 * Sealed tank: static pressure, controlled release, canister side drawn and held, whole system held.
 *
 * @param settings what differs from SEALED_HOLD
 * @returns the procedure
 */
export function sealedHold(settings: Partial<SealedHoldSettings> = {}): Procedure {
  const s = { ...SEALED_HOLD, ...settings };
  return {
    kind: 'sealed-hold',
    words: 'sealed tank: hold, release, canister side, whole system',
    steps: [
      {
        phase: 'hold',
        engineRunning: true,
        longestS: s.holdS,
        commands: { isolationOpen: 0, purgeDuty: 0, ventClosed: 0 },
      },
      { phase: 'release', engineRunning: true, longestS: s.releaseS, commands: { isolationOpen: 1 } },
      {
        phase: 'draw',
        engineRunning: true,
        longestS: 20,
        commands: { isolationOpen: 0, ventClosed: 1, purgeDuty: s.canisterDuty },
        endsWhen: [
          {
            what: { kind: 'reading', sensor: 'canisterPressure' },
            is: 'below',
            value: s.canisterTargetGaugePa,
            outcome: 'target vacuum reached',
          },
        ],
      },
      { phase: 'hold', engineRunning: true, longestS: s.canisterTestS, commands: { purgeDuty: 0 } },
      { phase: 'sealed', engineRunning: true, longestS: s.commonS, commands: { isolationOpen: 1 } },
      { phase: 'release', engineRunning: true, longestS: 15, commands: { ventClosed: 0 } },
    ],
  };
}
