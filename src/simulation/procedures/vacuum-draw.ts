import type { Procedure } from '../procedure.ts';

export interface VacuumDrawSettings {
  readonly baselineS: number;
  /** Reading at which the draw ends, gauge Pa, negative. */
  readonly targetGaugePa: number;
  readonly drawTimeOutS: number;
  readonly drawDuty: number;
  readonly settleS: number;
  readonly holdS: number;
  /** Vapour check: vent, seal again, and watch what the vapour alone does. 0 = left out. */
  readonly vapourCheckS: number;
  readonly releaseS: number;
}

/** Common practice, no source: typical of engine-vacuum self-tests; a car's own values win. */
export const VACUUM_DRAW: VacuumDrawSettings = {
  baselineS: 10,
  targetGaugePa: -2000,
  drawTimeOutS: 60,
  drawDuty: 0.3,
  settleS: 2,
  holdS: 60,
  vapourCheckS: 0,
  releaseS: 15,
};

/** Purge at first in a few steps, so that the engine does not stumble. */
const RAMP_S = [0, 1, 2, 3] as const;

/**
 * Engine running: baseline, seal and draw to a target, settle, hold, vapour check, release.
 *
 * @param settings what differs from VACUUM_DRAW
 * @returns the procedure
 */
export function vacuumDraw(settings: Partial<VacuumDrawSettings> = {}): Procedure {
  const s = { ...VACUUM_DRAW, ...settings };
  const ramp = RAMP_S.map((atS, i) => ({ atS, value: (s.drawDuty * (i + 1)) / RAMP_S.length }));
  const shut = { purgeDuty: 0, ventClosed: 1 };
  return {
    kind: 'vacuum-draw',
    words: 'vacuum draw by the engine, hold and release',
    steps: [
      { phase: 'baseline', engineRunning: true, longestS: s.baselineS, commands: { purgeDuty: 0, ventClosed: 0 } },
      {
        phase: 'draw',
        engineRunning: true,
        longestS: s.drawTimeOutS,
        commands: { ventClosed: 1, purgeDuty: ramp },
        endsWhen: [
          {
            what: { kind: 'reading', sensor: 'tankPressure' },
            is: 'below',
            value: s.targetGaugePa,
            outcome: 'target vacuum reached',
          },
        ],
      },
      { phase: 'settle', engineRunning: true, longestS: s.settleS, commands: shut },
      { phase: 'hold', engineRunning: true, longestS: s.holdS, commands: shut },
      ...(s.vapourCheckS > 0
        ? ([
            { phase: 'release', engineRunning: true, longestS: s.releaseS, commands: { ventClosed: 0 } },
            { phase: 'sealed', engineRunning: true, longestS: s.vapourCheckS, commands: shut },
          ] as const)
        : []),
      { phase: 'release', engineRunning: true, longestS: s.releaseS, commands: { purgeDuty: 0, ventClosed: 0 } },
    ],
  };
}
