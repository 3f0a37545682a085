/** Runs a long sum in a thread of its own; the program stays awake for Ctrl-C and progress meanwhile. */
import { Worker } from 'node:worker_threads';
import type { FromThread, ThreadTaskName, ThreadTasks } from './thread-tasks.ts';

/** From source in development; else the bundle's own file, which lies beside this one. */
const FILE = new URL(import.meta.url.endsWith('.ts') ? './thread-from-source.mjs' : './thread.mjs', import.meta.url);

/** What the sum throws is thrown here, with its class where that is one of the language's own. */
export function runInThread<Name extends ThreadTaskName>(
  name: Name,
  task: ThreadTasks[Name]['task'],
  onProgress: (fraction: number, what: string) => void = () => {},
): Promise<ThreadTasks[Name]['value']> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(FILE, { workerData: { name, task } });
    worker.on('message', (message: FromThread<ThreadTasks[Name]['value']>) => {
      if (message.kind === 'progress') onProgress(message.fraction, message.what);
      else resolve(message.value);
    });
    worker.on('error', reject);
    // After an answer this changes nothing any more.
    worker.on('exit', (code) => reject(new Error(`the thread of "${name}" ended with code ${code}`)));
  });
}
