/** What was commanded, as stepped lines under the trace: purge duty and vent. */
import { LETTER_SIZE, type Mark, type Point } from './drawing.ts';
import { ENGLISH_FIGURES, type FigureWords } from './figure-words.ts';

/** Commands at the times at which they changed, and at both ends. */
export interface Commands {
  readonly timeS: readonly number[];
  readonly purgeDuty?: readonly number[];
  readonly ventClosed?: readonly number[];
}

export interface CommandLanes {
  readonly commands: Commands;
  readonly xAt: (timeS: number) => number;
  readonly right: number;
  readonly top: number;
  readonly laneHeight: number;
  readonly words?: FigureWords;
}

export function commandLanes(input: CommandLanes): { readonly marks: readonly Mark[]; readonly height: number } {
  const { commands, xAt, right, top, laneHeight, words = ENGLISH_FIGURES } = input;
  const { timeS, purgeDuty, ventClosed } = commands;
  const lanes: { name: string; values: readonly number[]; top?: number }[] = [];
  if (purgeDuty !== undefined) {
    // Drawn against its largest value, which is said: a duty of a tenth must be seen as clearly as a full one.
    const most = Math.max(0, ...purgeDuty);
    lanes.push({ name: words.purge, values: purgeDuty.map((duty) => (most > 0 ? duty / most : 0)), top: most });
  }
  // Drawn as vent open = up, so that both lines are up when gas may pass.
  if (ventClosed !== undefined) lanes.push({ name: words.vent, values: ventClosed.map((closed) => 1 - closed) });
  const marks: Mark[] = [];
  lanes.forEach(({ name, values, top: most }, lane) => {
    const floor = top + (lane + 1) * laneHeight - 8;
    const tall = laneHeight - 12;
    const points: Point[] = [];
    timeS.forEach((t, i) => {
      const level = floor - tall * (values[i] ?? 0);
      const before = points.at(-1);
      if (before !== undefined) points.push([xAt(t), before[1]]);
      points.push([xAt(t), level]);
    });
    marks.push({ kind: 'line', pen: 'command', points });
    marks.push({
      kind: 'text',
      lettering: 'label',
      anchor: 'start',
      at: [0, floor - (tall - LETTER_SIZE) / 2 - 1],
      text: name,
    });
    if (most !== undefined && most > 0) {
      marks.push({
        kind: 'text',
        lettering: 'quiet',
        anchor: 'end',
        at: [right, top + 1],
        text: words.purgeUpTo(most),
      });
    }
  });
  return { marks, height: lanes.length * laneHeight };
}
