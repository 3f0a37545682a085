/** Shares the cases of a folder among child processes; what comes back does not depend on how many there are. */
import { type ChildProcess, fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { uniformAnswer } from './answers.ts';
import type { CaseResult, CaseTask } from './worker.ts';

/** A case that takes longer than this is given up [s]; a hundred times what the longest takes. */
const LONGEST_S = 600;

export interface RunOptions {
  readonly folder: string;
  readonly names: readonly string[];
  readonly workers?: number;
  readonly onResult?: (result: CaseResult, done: number) => void;
}

/** The result of every case, in the order of the names. */
export async function runCases({ folder, names, workers, onResult }: RunOptions): Promise<CaseResult[]> {
  const results = new Map<string, CaseResult>();
  let next = 0;
  const oneWorker = async () => {
    let child: ChildProcess | undefined;
    for (let name = names[next++]; name !== undefined; name = names[next++]) {
      child ??= startChild();
      const { result, lost } = await askChild(child, { folder, name });
      if (lost) child = undefined;
      results.set(name, result);
      onResult?.(result, results.size);
    }
    child?.kill();
  };
  const count = Math.max(1, Math.min(workers ?? availableParallelism(), names.length));
  await Promise.all(Array.from({ length: count }, oneWorker));
  return names.map((name) => results.get(name)!);
}

/** The child gets the same loader as this process, so that it runs from source as well. */
const startChild = (): ChildProcess => fork(fileURLToPath(new URL('./worker.ts', import.meta.url)));

/** A child that dies or hangs loses its case, not the run. */
function askChild(child: ChildProcess, task: CaseTask): Promise<{ result: CaseResult; lost: boolean }> {
  const start = performance.now();
  return new Promise((resolve) => {
    const settle = (result: CaseResult, lost: boolean) => {
      clearTimeout(timer);
      child.off('message', onMessage);
      child.off('exit', onExit);
      child.off('error', onError);
      // A child that is given up may still fail; that must not stop the run.
      if (lost) child.on('error', () => {});
      resolve({ result, lost });
    };
    const lose = (failure: string) =>
      settle(
        { answer: uniformAnswer(task.name, undefined), seconds: (performance.now() - start) / 1e3, failure },
        true,
      );
    const onMessage = (result: unknown) => settle(result as CaseResult, false);
    const onExit = (code: number | null, signal: string | null) => lose(`the process ended by ${signal ?? code}`);
    const onError = (error: Error) => {
      child.kill('SIGKILL');
      lose(`the process failed: ${error.message}`);
    };
    const timer = setTimeout(() => {
      lose(`no answer within ${LONGEST_S} s`);
      child.kill('SIGKILL');
    }, LONGEST_S * 1e3);
    child.on('message', onMessage);
    child.on('exit', onExit);
    child.on('error', onError);
    child.send(task, (error) => {
      if (error) onError(error);
    });
  });
}
