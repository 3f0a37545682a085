import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { PlayedRun, PlayRequest, WorkerAnswer } from './played-run.ts';
import { PlayerClient, type WorkerLike } from './player-client.ts';

class FakeWorker implements WorkerLike {
  onmessage: ((event: MessageEvent<WorkerAnswer>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  readonly asked: { readonly id: number; readonly request: PlayRequest }[] = [];
  isEnded = false;
  postMessage(message: { readonly id: number; readonly request: PlayRequest }): void {
    this.asked.push(message);
  }
  terminate(): void {
    this.isEnded = true;
  }
  answer(): void {
    const { id, request } = this.asked.at(-1)!;
    this.onmessage?.({ data: { id, run: { request } as PlayedRun } } as MessageEvent<WorkerAnswer>);
  }
}

const request = (fillFraction: number): PlayRequest => ({
  system: { layout: 'engine-vacuum', closure: 'capped', hasRecovery: true, fillFraction },
  faults: [],
  procedure: 'vacuum-draw',
  isCoarse: true,
});

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

it('sends of those that wait only the newest', () => {
  const worker = new FakeWorker();
  const got: (number | undefined)[] = [];
  const client = new PlayerClient(
    () => worker,
    (run) => got.push(run.request.system.fillFraction),
    () => {},
  );
  for (const fill of [0.1, 0.2, 0.3]) client.ask(request(fill));
  expect(worker.asked).toHaveLength(1);
  worker.answer();
  expect(worker.asked.map((a) => a.request.system.fillFraction)).toEqual([0.1, 0.3]);
  worker.answer();
  expect(got).toEqual([0.1, 0.3]);
});

it('ends a run that nobody waits for any more and takes too long', () => {
  const workers: FakeWorker[] = [];
  const client = new PlayerClient(
    () => {
      workers.push(new FakeWorker());
      return workers.at(-1)!;
    },
    () => {},
    () => {},
  );
  client.ask(request(0.1));
  client.ask(request(0.2));
  vi.advanceTimersByTime(1000);
  expect(workers).toHaveLength(2);
  expect(workers[0]!.isEnded).toBe(true);
  expect(workers[1]!.asked.map((a) => a.request.system.fillFraction)).toEqual([0.2]);
});
