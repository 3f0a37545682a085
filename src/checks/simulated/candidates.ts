/**
 * Recordings that could be made next: each is the car's draw test, changed in one way that may tell apart what is still
 * open. Only layouts that can be drawn down by the engine, if not in every test of theirs; others have none yet.
 */

import type { StartConditions } from '../../simulation/initial-state.ts';
import type { Procedure } from '../../simulation/procedure.ts';
import { vacuumDraw } from '../../simulation/procedures/vacuum-draw.ts';
import type { LayoutId } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';
import type { SystemParameters } from '../../system/parameters.ts';

export const RECORDING_IDS = ['R01', 'R02', 'R03', 'R04'] as const;
export type RecordingId = (typeof RECORDING_IDS)[number];

export interface Candidate {
  readonly id: RecordingId;
  readonly procedure: Procedure;
  readonly change?: (p: SystemParameters) => void;
  /** Something done to the car for the test, simulated as a fault. */
  readonly made?: Fault;
  readonly start?: Partial<StartConditions>;
}

export const DRAWN_LAYOUTS: readonly LayoutId[] = ['engine-vacuum', 'saddle-tank', 'two-path-purge', 'engine-off'];

/** Deeper than the usual -2 kPa, and still inside the ceiling for plastic tanks [Pa gauge]. Judgement. */
const DEEPER_PA = -2400;
/** Level of the recording at another fuel level. Judgement: four fifths, well inside the enabling range. */
const OTHER_LEVEL = 0.8;
/** A soft clamp lets next to nothing through [m]. Judgement. */
const CLAMPED_M = 5e-5;
/** Vacuum in the tank when the clamp is set [Pa gauge]. Judgement: the usual target. */
const CLAMPED_AT_PA = -2000;

export const CANDIDATES: readonly Candidate[] = [
  {
    id: 'R01',
    procedure: vacuumDraw({ targetGaugePa: DEEPER_PA, drawTimeOutS: 90 }),
  },
  {
    id: 'R02',
    procedure: vacuumDraw(),
    change: (p) => {
      p.tank.fillFraction = OTHER_LEVEL;
    },
  },
  { id: 'R03', procedure: vacuumDraw({ holdS: 240 }) },
  {
    id: 'R04',
    made: { kind: 'vapour-line-blocked', size: CLAMPED_M },
    start: { tankGaugePa: CLAMPED_AT_PA },
    procedure: {
      kind: 'vacuum-draw',
      words: 'drawn down, clamped at the vapour line, tank side held alone',
      steps: [
        { phase: 'hold', engineRunning: true, longestS: 90, commands: { purgeDuty: 0, ventClosed: 1 } },
        { phase: 'release', engineRunning: true, longestS: 15, commands: { purgeDuty: 0, ventClosed: 0 } },
      ],
    },
  },
];
