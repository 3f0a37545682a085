/** Runs in a worker thread: one long sum, then its end. Each loads what it needs when it begins. */
import { parentPort, workerData } from 'node:worker_threads';
import type { FromThread, ThreadTaskName, ThreadTasks } from './thread-tasks.ts';

type Handlers = {
  readonly [Name in ThreadTaskName]: (
    task: ThreadTasks[Name]['task'],
    report: (fraction: number, what: string) => void,
  ) => Promise<ThreadTasks[Name]['value']>;
};

const HANDLERS: Handlers = {
  sheet: async (task, onProgress) =>
    (await import('../server/finding/make-sheet.ts')).makeSheetFrom({ ...task, onProgress }),
  simulate: async (task) => (await import('./play-scenario.ts')).playScenario(task),
  plan: async (task) => (await import('./search-plan.ts')).searchPlan(task),
};

const say = (message: FromThread<unknown>): void => parentPort!.postMessage(message);
const { name, task } = workerData as { name: ThreadTaskName; task: never };
const value = await HANDLERS[name](task, (fraction, what) => say({ kind: 'progress', fraction, what }));
say({ kind: 'value', value });
