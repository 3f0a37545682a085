/** Tells those who look at a job that something happened to it. */
import type { JobEvent, Work } from '../contract/work.ts';

export type Ring = { readonly event: 'job'; readonly data: JobEvent } | { readonly event: 'work'; readonly data: Work };
type Listener = (ring: Ring) => void;

export class Bell {
  readonly #listeners = new Map<string, Set<Listener>>();

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
    for (const listener of this.#listeners.get(jobId) ?? []) listener(ring);
  }

  jobChanged({ id, version }: { readonly id: string; readonly version: number }): void {
    this.ring(id, { event: 'job', data: { version } });
  }
}
