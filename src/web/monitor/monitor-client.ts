import type { Reply, TaskName, Tasks } from './monitor-worker.ts';

interface Waiting {
  readonly resolve: (value: never) => void;
  readonly reject: (error: Error) => void;
}

/** Asks the worker of this section; it is started with the first question. */
export class MonitorClient {
  private worker: Worker | undefined;
  private readonly waiting = new Map<number, Waiting>();
  private nextId = 1;

  ask<Name extends TaskName>(name: Name, task: Tasks[Name]['task']): Promise<Tasks[Name]['value']> {
    const worker = this.started();
    const id = this.nextId++;
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve, reject });
      worker.postMessage({ id, name, task });
    });
  }

  close(): void {
    this.worker?.terminate();
    this.worker = undefined;
    this.waiting.clear();
  }

  private started(): Worker {
    if (this.worker !== undefined) return this.worker;
    const worker = new Worker(new URL('./monitor-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      const asked = this.waiting.get(data.id);
      this.waiting.delete(data.id);
      if ('error' in data) asked?.reject(new Error(data.error));
      else asked?.resolve(data.value as never);
    };
    worker.onerror = ({ message }) => {
      for (const { reject } of this.waiting.values()) reject(new Error(message));
      this.waiting.clear();
    };
    this.worker = worker;
    return worker;
  }
}
