/** Shares the drawn cases among child processes; what comes back does not depend on how many there are. */
import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { JudgeReply, JudgeTask } from './worker.ts';

export function runCases(
  seed: number,
  cases: number,
  workers: number,
  onReply: (done: number) => void,
): Promise<JudgeReply[]> {
  const replies = new Array<JudgeReply>(cases);
  let next = 0;
  let done = 0;
  const oneWorker = () =>
    new Promise<void>((resolve, reject) => {
      // The child gets the same loader as this process, so that it runs from source as well.
      const child = fork(fileURLToPath(new URL('./worker.ts', import.meta.url)));
      let index = -1;
      const ask = () => {
        index = next++;
        if (index >= cases) {
          child.removeAllListeners('exit');
          child.kill();
          resolve();
        } else child.send({ seed, index } satisfies JudgeTask);
      };
      child.on('message', (reply: JudgeReply) => {
        replies[index] = reply;
        onReply(++done);
        ask();
      });
      child.on('error', reject);
      child.on('exit', (code, signal) => reject(new Error(`case ${index}: the process ended by ${signal ?? code}`)));
      ask();
    });
  return Promise.all(Array.from({ length: Math.max(1, Math.min(workers, cases)) }, oneWorker)).then(() => replies);
}
