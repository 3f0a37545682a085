/** What was last found out of going on holding, kept until it is asked again; the same for every kind of run. */
import { type HoldingLonger, type HoldQuestion, judgeHold } from './holding-longer.ts';

/** How far ahead is looked, and how often [s]. */
export const AHEAD_S = 60;
export const HALF_AHEAD_S = 30;
const LOOK_EVERY_S = 5;
/** Causes that had all arrived so lately [s] are taken as settled: one of them always moves a little as data comes. */
const LATELY_S = 10;

export class HoldAnswer {
  /** Absent until it was found once. */
  sd: HoldingLonger['sdLnDiameter'] | undefined;
  parting = 0;
  lookedS = Number.NEGATIVE_INFINITY;
  private settledS = Number.NEGATIVE_INFINITY;

  reset(): void {
    this.sd = undefined;
    this.parting = 0;
    this.lookedS = Number.NEGATIVE_INFINITY;
    this.settledS = Number.NEGATIVE_INFINITY;
  }

  /** Whether the last look is as old as looks may be. */
  isOld(nowS: number): boolean {
    return nowS - this.lookedS >= LOOK_EVERY_S;
  }

  noteSettled(nowS: number): void {
    this.settledS = nowS;
  }

  /** The verdict at this time; undefined while nothing was found out. */
  judge(
    nowS: number,
    question: () => Omit<HoldQuestion, 'settled' | 'sdLnDiameter' | 'partingLnOdds'>,
  ): HoldingLonger | undefined {
    if (!this.sd) return undefined;
    return judgeHold({
      ...question(),
      settled: nowS - this.settledS <= LATELY_S,
      sdLnDiameter: this.sd,
      partingLnOdds: this.parting,
    });
  }
}
