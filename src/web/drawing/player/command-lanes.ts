import type { CommandId } from '../../../system/network.ts';
import type { PlayedRun } from '../../simulation/played-run.ts';
import type { Text } from '../../text/en.ts';

const LANES = [
  ['purgeDuty', 'purge'],
  ['ventClosed', 'vent'],
  ['isolationOpen', 'isolation'],
  ['pumpOn', 'pump'],
  ['changeoverToTank', 'changeover'],
  ['nozzleOn', 'filling'],
] as const satisfies readonly (readonly [CommandId, keyof Text['drawing']['trace']])[];

export interface Lane {
  readonly name: string;
  /** Corners of the command over time, values 0 to 1. */
  readonly points: readonly (readonly [number, number])[];
}

/** Commands that change during the run, each as a lane of its own. */
export function commandLanes(run: PlayedRun, words: Text['drawing']['trace']): readonly Lane[] {
  return LANES.flatMap(([id, word]) => {
    const values = run.commands.map((c) => c[id]);
    if (values.every((v) => v === 0)) return [];
    const points: [number, number][] = [];
    values.forEach((value, i) => {
      const from = run.commandTimesS[i]!;
      const to = run.commandTimesS[i + 1] ?? run.durationS;
      points.push([from, value], [to, value]);
    });
    return [{ name: words[word], points }];
  });
}
