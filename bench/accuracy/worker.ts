/** A child process that diagnoses the cases it is told, one after another. */
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import { type Answer, answerFrom, uniformAnswer } from './answers.ts';
import { readCase, readRecording } from './practice.ts';

export interface CaseTask {
  readonly folder: string;
  readonly name: string;
}

export interface CaseResult {
  readonly answer: Answer;
  /** Reading and diagnosis, wall time in this process. */
  readonly seconds: number;
  /** Why the answer knows nothing; absent where the case was diagnosed. */
  readonly failure?: string;
}

function solve({ folder, name }: CaseTask): CaseResult {
  const start = performance.now();
  const seconds = () => (performance.now() - start) / 1e3;
  let letter: string | undefined;
  try {
    const c = readCase(folder, name);
    letter = c.letter;
    const finding = diagnose({ car: c.car, recordings: [readRecording(c)] });
    return { answer: answerFrom(name, c.letter, finding), seconds: seconds() };
  } catch (error) {
    const failure = error instanceof Error ? error.message : String(error);
    return { answer: uniformAnswer(name, letter), seconds: seconds(), failure };
  }
}

process.on('message', (task: CaseTask) => {
  // A parent that has gone meanwhile wants no answer.
  process.send?.(solve(task), undefined, undefined, () => {});
});
// The parent is gone: so is the reason to work.
process.on('disconnect', () => process.exit());
