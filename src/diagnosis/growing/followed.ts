/** What follows one kind of run through its growing history. */
import type { CauseId, Interval } from '../finding.ts';
import type { Grid } from '../prepare.ts';
import type { HoldingLonger } from './holding-longer.ts';
import type { Outline } from './snapshot.ts';

export interface GrowingCause {
  readonly id: CauseId;
  readonly probability: number;
}
export interface GrowingPair {
  readonly ids: readonly [CauseId, CauseId];
  readonly probability: number;
}

/** What can be said after an update. */
export interface Said {
  /** Most probable first; empty as long as nothing can be said. */
  readonly causes: readonly GrowingCause[];
  /** Two faults at once, those that are worth a word. */
  readonly pairs: readonly GrowingPair[];
  /** False while causes are still being tried on what has come so far. */
  readonly settled: boolean;
  readonly diameterMm: Interval | null;
  readonly exceeds: { readonly mm0_5: number | null; readonly mm1_0: number | null };
  /** Present while someone stands and waits. */
  readonly holdingLonger?: HoldingLonger;
  readonly warnings: readonly string[];
  /** What the run has not put to the test so far. */
  readonly limits: readonly string[];
  /** Steps of the model that the update took. */
  readonly modelSteps: number;
}

export interface RunFollower {
  /** Longest bin by the time since the last change [s]. */
  readonly width: Grid['width'];
  /** Steps of the model allowed for each second of recording. */
  readonly stepsPerS: number;
  /** Bins that the history may keep. */
  readonly mostBins: number;
  /**
   * Takes up all that has come.
   *
   * @param budget steps of the model allowed
   * @param ended whether nothing more will come
   */
  update(outline: Outline, budget: number, ended: boolean): Said;
}

/** Bins where it is not known yet what will matter [s]. */
export const FINE_BIN_S = 0.05;
export const NO_PRESSURE = 'There is no tank pressure; map the column that holds it.';

export const NOTHING_SAID: Omit<Said, 'warnings'> = {
  causes: [],
  pairs: [],
  settled: false,
  diameterMm: null,
  exceeds: { mm0_5: null, mm1_0: null },
  limits: [],
  modelSteps: 0,
};

export const ranked = (byCause: ReadonlyMap<CauseId, number>): GrowingCause[] =>
  [...byCause].map(([id, probability]) => ({ id, probability })).sort((a, b) => b.probability - a.probability);
