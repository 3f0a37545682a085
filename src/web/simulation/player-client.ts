import type { PlayedRun, PlayRequest, WorkerAnswer } from './played-run.ts';

/** What the client needs of a worker; a test hands in its own. */
export interface WorkerLike {
  onmessage: ((event: MessageEvent<WorkerAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(message: { readonly id: number; readonly request: PlayRequest }): void;
  terminate(): void;
}

/** A run that nobody waits for any more is let finish this long, then its worker is ended. Judgement. */
const STALE_MS = 400;

/**
 * One line to a worker: at most one run at a time, and of those that wait only the newest. A stale run's answer still
 * shows while the slider moves on, since it is nearer to the wish than what is on the page; one that takes long is ended.
 */
export class PlayerClient {
  private worker: WorkerLike | undefined;
  private busy: { readonly id: number; readonly since: number } | undefined;
  private waiting: PlayRequest | undefined;
  private nextId = 1;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private readonly make: () => WorkerLike;
  private readonly onRun: (run: PlayedRun) => void;
  private readonly onError: (words: string) => void;

  constructor(make: () => WorkerLike, onRun: (run: PlayedRun) => void, onError: (words: string) => void) {
    this.make = make;
    this.onRun = onRun;
    this.onError = onError;
  }

  ask(request: PlayRequest): void {
    this.waiting = request;
    if (this.busy === undefined) this.sendNext();
    else if (this.timer === undefined) {
      const left = STALE_MS - (Date.now() - this.busy.since);
      this.timer = setTimeout(() => this.abandon(), Math.max(0, left));
    }
  }

  close(): void {
    clearTimeout(this.timer);
    this.worker?.terminate();
    this.worker = undefined;
  }

  private sendNext(): void {
    const request = this.waiting;
    if (request === undefined) return;
    this.waiting = undefined;
    this.worker ??= this.started();
    this.busy = { id: this.nextId++, since: Date.now() };
    this.worker.postMessage({ id: this.busy.id, request });
  }

  private abandon(): void {
    this.timer = undefined;
    if (this.busy === undefined || this.waiting === undefined) return;
    this.worker?.terminate();
    this.worker = undefined;
    this.busy = undefined;
    this.sendNext();
  }

  private started(): WorkerLike {
    const worker = this.make();
    worker.onmessage = ({ data }) => {
      if (worker !== this.worker || data.id !== this.busy?.id) return;
      this.busy = undefined;
      clearTimeout(this.timer);
      this.timer = undefined;
      // First the next run: the worker computes while the page draws this one.
      this.sendNext();
      if ('run' in data) this.onRun(data.run);
      else this.onError(data.error);
    };
    worker.onerror = (event) => {
      if (worker !== this.worker) return;
      this.busy = undefined;
      this.worker = undefined;
      worker.terminate();
      this.onError(event.message);
    };
    return worker;
  }
}
