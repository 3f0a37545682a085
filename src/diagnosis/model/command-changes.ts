/** Command changes of a recording: when the vent valve, the purge valve or the fuel nozzle changed state. */
import type { Recording } from '../../recording/recording.ts';

export type ChangeKind =
  | 'vent-shut'
  | 'vent-open'
  | 'purge-on'
  | 'purge-off'
  | 'purge-step'
  | 'fill-on'
  | 'fill-off'
  | 'float-shut';

export interface CommandChange {
  readonly kind: ChangeKind;
  /** Middle of the gap between the samples before and after [s]. */
  readonly timeS: number;
  /** Width of that gap [s]. */
  readonly gapS: number;
}

/** Duty step that counts as a change of its own [-], judgement. */
const DUTY_STEP = 0.08;

/**
 * Finds the changes of the vent and purge commands.
 *
 * @param recording recording with any of the two command channels
 * @returns changes in order of time; two within one sample gap are both listed
 */
export function commandChanges(recording: Recording): CommandChange[] {
  const { timeS, channels } = recording;
  const found: CommandChange[] = [];
  const scan = (x: Float64Array | undefined, judge: (before: number, after: number) => ChangeKind | undefined) => {
    if (!x) return;
    let last = -1;
    for (let i = 0; i < x.length; i++) {
      if (!Number.isFinite(x[i]!)) continue;
      if (last >= 0) {
        const kind = judge(x[last]!, x[i]!);
        if (kind) {
          const gapS = timeS[i]! - timeS[last]!;
          found.push({ kind, timeS: timeS[last]! + 0.5 * gapS, gapS });
        }
      }
      last = i;
    }
  };
  scan(channels.ventClosed, (a, b) =>
    a < 0.5 && b >= 0.5 ? 'vent-shut' : a >= 0.5 && b < 0.5 ? 'vent-open' : undefined,
  );
  scan(channels.purgeDuty, (a, b) => {
    if (a <= 0 && b > 0) return 'purge-on';
    if (a > 0 && b <= 0) return 'purge-off';
    return Math.abs(b - a) >= DUTY_STEP ? 'purge-step' : undefined;
  });
  return found.sort((a, b) => a.timeS - b.timeS);
}
