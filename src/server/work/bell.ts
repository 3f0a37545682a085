/** Tells those who look at a job that something happened to it, on this server and on others with the same database. */
import type { JobEvent, Work } from '../contract/work.ts';
import type { Neighbours } from './neighbours.ts';

export type Ring = { readonly event: 'job'; readonly data: JobEvent } | { readonly event: 'work'; readonly data: Work };
type Listener = (ring: Ring) => void;

export class Bell {
  readonly #listeners = new Map<string, Set<Listener>>();
  readonly #neighbours: Neighbours;

  constructor(neighbours: Neighbours) {
    this.#neighbours = neighbours;
    neighbours.hear((notice) => {
      if (notice.event === 'job') this.#ringHere(notice.jobId, { event: 'job', data: notice.data });
      if (notice.event === 'work') this.#ringHere(notice.jobId, { event: 'work', data: notice.data });
    });
  }

  /** Returns what ends the listening. */
  listen(jobId: string, listener: Listener): () => void {
    const those = this.#listeners.get(jobId) ?? new Set();
    this.#listeners.set(jobId, those);
    those.add(listener);
    return () => {
      those.delete(listener);
      if (those.size === 0) this.#listeners.delete(jobId);
    };
  }

  ring(jobId: string, ring: Ring): void {
    this.#ringHere(jobId, ring);
    this.#neighbours.tell({ ...ring, jobId });
  }

  jobChanged({ id, version }: { readonly id: string; readonly version: number }): void {
    this.ring(id, { event: 'job', data: { version } });
  }

  #ringHere(jobId: string, ring: Ring): void {
    for (const listener of this.#listeners.get(jobId) ?? []) listener(ring);
  }
}
