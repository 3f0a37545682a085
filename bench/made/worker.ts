/** A child process that makes and diagnoses the cases it is told, one after another. */
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import type { CauseId } from '../../src/diagnosis/finding.ts';
import { makeCase } from './draw-car.ts';

export type MadeReply =
  | {
      readonly index: number;
      readonly causes: readonly { readonly id: CauseId; readonly probability: number }[];
    }
  | { readonly index: number; readonly failure: string };

function reply(index: number): MadeReply {
  try {
    const { car, recording } = makeCase(index);
    const { causes } = diagnose({ car, recordings: [recording] });
    const lost = causes.find(({ probability }) => !Number.isFinite(probability));
    if (lost) throw new Error(`the probability of ${lost.id} is no number`);
    return { index, causes: causes.map(({ id, probability }) => ({ id, probability })) };
  } catch (error) {
    return { index, failure: error instanceof Error ? error.message : String(error) };
  }
}

process.on('message', (index: number) => {
  // A parent that has gone meanwhile wants no answer.
  process.send?.(reply(index), undefined, undefined, () => {});
});
process.on('disconnect', () => process.exit());
