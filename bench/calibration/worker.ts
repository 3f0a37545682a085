/** A child process that judges the cases it is told, one after another. */
import { type Judged, judgeCase } from './judge-case.ts';

export interface JudgeTask {
  readonly seed: number;
  readonly index: number;
}

export type JudgeReply = { readonly judged: Judged } | { readonly index: number; readonly failure: string };

function reply({ seed, index }: JudgeTask): JudgeReply {
  try {
    return { judged: judgeCase(seed, index) };
  } catch (error) {
    return { index, failure: error instanceof Error ? error.message : String(error) };
  }
}

process.on('message', (task: JudgeTask) => {
  // A parent that has gone meanwhile wants no answer.
  process.send?.(reply(task), undefined, undefined, () => {});
});
process.on('disconnect', () => process.exit());
