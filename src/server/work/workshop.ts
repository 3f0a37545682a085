/**
 * Worker threads: one bench for long work, one for reading, so that a preview never waits behind a finding, and one for what
 * goes on beside live recordings.
 */
import { availableParallelism } from 'node:os';
import { MessageChannel, type MessagePort } from 'node:worker_threads';
import { Piscina } from 'piscina';
import { Refusal } from '../refusal.ts';
import type { CompanionName, Companions, Outcome, ProgressNote, TaskName, Tasks } from './tasks.ts';

/** Threads that have had nothing to do for this long end, and give their memory back. */
const IDLE_MS = 60_000;

/** Two for each live recording: the finding that grows, and perhaps a simulated car. */
const MOST_COMPANIONS = 8;

/** In development from its source; else the bundle's own file, which lies beside this one. */
const WORKER = new URL(import.meta.url.endsWith('.ts') ? './worker-from-source.mjs' : './worker.mjs', import.meta.url);

/** Threads of one kind. When they cannot even start, what waits for them fails, and the next task tries anew. */
class Bench {
  readonly #maxThreads: number;
  readonly #filename: string;
  #pool: Piscina | undefined;
  #broken: Promise<never> | undefined;

  constructor(maxThreads: number, filename: string) {
    this.#maxThreads = maxThreads;
    this.#filename = filename;
  }

  run(task: object, options: Parameters<Piscina['run']>[1]): Promise<unknown> {
    if (this.#pool === undefined || this.#broken === undefined) this.#start();
    return Promise.race([this.#pool!.run(task, options), this.#broken!]);
  }

  #start(): void {
    const pool = new Piscina({
      filename: this.#filename,
      minThreads: 0,
      maxThreads: this.#maxThreads,
      idleTimeout: IDLE_MS,
      concurrentTasksPerWorker: 1,
    });
    this.#pool = pool;
    this.#broken = new Promise((_, reject) => {
      pool.on('error', (error) => {
        reject(error);
        this.#pool = undefined;
        pool.destroy().catch(() => {});
      });
    });
    // Only those who wait are to be told.
    this.#broken.catch(() => {});
  }

  async close(): Promise<void> {
    await this.#pool?.destroy();
  }
}

export interface RunOptions {
  readonly signal?: AbortSignal;
  readonly onProgress?: (note: ProgressNote) => void;
}

export class Workshop {
  readonly #long: Bench;
  readonly #reading: Bench;
  readonly #companions: Bench;

  constructor(threads: number = Math.max(1, availableParallelism() - 1), worker: URL = WORKER) {
    this.#long = new Bench(threads, worker.href);
    this.#reading = new Bench(Math.max(1, Math.min(2, threads)), worker.href);
    this.#companions = new Bench(MOST_COMPANIONS, worker.href);
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
      const outcome = (await pool.run(
        { ...task, port: port2 },
        { name, transferList: [port2], ...(signal === undefined ? {} : { signal }) },
      )) as Outcome<Tasks[Name]['value']>;
      if (outcome.ok) return outcome.value;
      const { code, message, ...facts } = outcome.error;
      throw new Refusal(code, message, facts);
    } finally {
      port1.close();
    }
  }

  /** Work in a thread of its own that goes on until either side closes the port; `ended` fails when it does. */
  begin<Name extends CompanionName>(name: Name, task: Companions[Name]): { port: MessagePort; ended: Promise<void> } {
    const { port1, port2 } = new MessageChannel();
    const ended = this.#companions
      .run({ ...task, port: port2 }, { name, transferList: [port2] })
      .then(() => undefined)
      .finally(() => port1.close());
    return { port: port1, ended };
  }

  async close(): Promise<void> {
    await Promise.all([this.#long.close(), this.#reading.close(), this.#companions.close()]);
  }
}
