import type { Procedure, Step } from '../procedure.ts';

export interface RefuellingSettings {
  readonly openS: number;
  /** Volume that the driver wants, m3. */
  readonly volumeM3: number;
  readonly tries: number;
  readonly pauseS: number;
  readonly longestFillS: number;
  /** Gauge pressure at the filler that shuts the nozzle off, Pa. */
  readonly shutOffGaugePa: number;
  /** The filler makes a liquid seal while fuel flows. */
  readonly sealedFiller: boolean;
}

/** Common practice, no source: up to four tries; 10 to 14 inH2O shut the nozzle off. */
export const REFUELLING: RefuellingSettings = {
  openS: 5,
  volumeM3: 0.025,
  tries: 4,
  pauseS: 5,
  longestFillS: 180,
  shutOffGaugePa: 3000,
  sealedFiller: true,
};

/**
 * Cap off, fill until the nozzle shuts off or the wanted volume is in, wait, try again; cap on.
 *
 * @param settings what differs from REFUELLING
 * @returns the procedure
 */
export function refuelling(settings: Partial<RefuellingSettings> = {}): Procedure {
  const s = { ...REFUELLING, ...settings };
  const steps: Step[] = [
    {
      phase: 'rest',
      engineRunning: false,
      longestS: s.openS,
      commands: { fillerOpen: 1, ventClosed: 0, purgeDuty: 0, isolationOpen: 1, changeoverToTank: 0 },
    },
  ];
  for (let k = 0; k < s.tries; k++) {
    steps.push({
      phase: 'filling',
      engineRunning: false,
      longestS: s.longestFillS,
      commands: { nozzleOn: 1, fillerOpen: s.sealedFiller ? 0 : 1 },
      endsWhen: [
        {
          what: { kind: 'gaugePa', space: 'tank' },
          is: 'above',
          value: s.shutOffGaugePa,
          outcome: 'nozzle shut off by back-pressure',
        },
        {
          what: { kind: 'fillFraction', space: 'tank' },
          is: 'above',
          value: 0.99,
          outcome: 'nozzle shut off by fuel at the spout',
        },
        { what: { kind: 'dispensedM3' }, is: 'above', value: s.volumeM3, outcome: 'wanted volume is in' },
      ],
    });
    steps.push({
      phase: 'filled',
      engineRunning: false,
      longestS: s.pauseS,
      commands: { nozzleOn: 0 },
      endsWhen: [
        {
          what: { kind: 'dispensedM3' },
          is: 'above',
          value: s.volumeM3 * (1 - 1e-6),
          outcome: 'wanted volume is in',
          endsProcedure: true,
        },
      ],
    });
  }
  return { kind: 'refuelling', words: 'refuelling until the nozzle shuts off', steps };
}
