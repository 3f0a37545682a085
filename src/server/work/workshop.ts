/** Worker threads: one bench for long work, one for reading, so that a preview never waits behind a finding. */
import { createRequire } from 'node:module';
import { availableParallelism } from 'node:os';
import { pathToFileURL } from 'node:url';
import { MessageChannel } from 'node:worker_threads';
import { Piscina } from 'piscina';
import { Refusal } from '../refusal.ts';
import type { Outcome, ProgressNote, TaskName, Tasks } from './tasks.ts';

/** Threads that have had nothing to do for this long end, and give their memory back. */
const IDLE_MS = 60_000;

/** From its source under the test runner and in development; else the bundle's own file, which lies beside this one. */
function workerFile(): { readonly filename: string; readonly execArgv: string[] } {
  const isSource = import.meta.url.endsWith('.ts');
  if (!isSource) return { filename: new URL('./worker.mjs', import.meta.url).href, execArgv: [] };
  const tsx = pathToFileURL(createRequire(import.meta.url).resolve('tsx/esm')).href;
  return { filename: new URL('./worker.ts', import.meta.url).href, execArgv: ['--import', tsx] };
}

const bench = (maxThreads: number): Piscina =>
  new Piscina({ ...workerFile(), minThreads: 0, maxThreads, idleTimeout: IDLE_MS, concurrentTasksPerWorker: 1 });

export interface RunOptions {
  readonly signal?: AbortSignal;
  readonly onProgress?: (note: ProgressNote) => void;
}

export class Workshop {
  readonly #long: Piscina;
  readonly #reading: Piscina;

  constructor(threads: number = Math.max(1, availableParallelism() - 1)) {
    this.#long = bench(threads);
    this.#reading = bench(Math.max(1, Math.min(2, threads)));
  }

  async run<Name extends TaskName>(
    name: Name,
    task: Omit<Tasks[Name]['task'], 'port'>,
    { signal, onProgress }: RunOptions = {},
  ): Promise<Tasks[Name]['value']> {
    const { port1, port2 } = new MessageChannel();
    port1.on('message', (note: ProgressNote) => onProgress?.(note));
    const pool = name === 'read' ? this.#reading : this.#long;
    try {
      const outcome: Outcome<Tasks[Name]['value']> = await pool.run(
        { ...task, port: port2 },
        { name, transferList: [port2], ...(signal === undefined ? {} : { signal }) },
      );
      if (outcome.ok) return outcome.value;
      const { code, message, ...facts } = outcome.error;
      throw new Refusal(code, message, facts);
    } finally {
      port1.close();
    }
  }

  async close(): Promise<void> {
    await Promise.all([this.#long.destroy(), this.#reading.destroy()]);
  }
}
