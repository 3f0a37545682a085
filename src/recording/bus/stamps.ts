import type { StampForm } from './candump-line.ts';

/** What the stamps of a capture count from. */
export type StampMeaning = 'since-1970' | 'since-start' | 'since-last-frame' | 'local-date' | 'none';

const HOUR_S = 3600;
/** Two frames of a bus at work are never further apart than this when only the clock was put back an hour (judgement). */
const SET_BACK_SLACK_S = 60;
/** Stamps since the start fall hardly ever, stamps since the frame before fall every second time (judgement). */
const LEAST_SHARE_OF_FALLS = 0.1;

/** What the stamps mean, from the head of the capture. */
export function stampMeaning(forms: ReadonlySet<StampForm>, shortStamps: number, shortFalls: number): StampMeaning {
  if (forms.has('date')) return 'local-date';
  if (forms.has('long')) return 'since-1970';
  if (!forms.has('short')) return 'none';
  return shortFalls > 0 && shortFalls >= LEAST_SHARE_OF_FALLS * shortStamps ? 'since-last-frame' : 'since-start';
}

/** Turns the stamps of a capture into one clock. */
export class CaptureClock {
  readonly meaning: StampMeaning;
  /** Frames whose stamp was before an earlier one. */
  backward = 0;
  /** How often a local clock was put back an hour, as at the end of summer time. */
  setBack = 0;
  private lastRawS: number | undefined;
  private shiftS = 0;

  constructor(meaning: StampMeaning) {
    this.meaning = meaning;
  }

  /** Time of a frame, s: from its stamp, or from the sum of all stamps where these count from the frame before. */
  read(rawS: number | undefined, sumS: number): number | undefined {
    if (rawS === undefined) return undefined;
    if (this.meaning === 'since-last-frame') return sumS;
    const last = this.lastRawS;
    this.lastRawS = rawS;
    if (last !== undefined && rawS < last) {
      const step = last - rawS;
      if (this.meaning === 'local-date' && step <= HOUR_S && step > HOUR_S - SET_BACK_SLACK_S) {
        this.shiftS += HOUR_S;
        this.setBack++;
      } else this.backward++;
    }
    return rawS + this.shiftS;
  }
}
