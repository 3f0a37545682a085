/** The marks of long work in the store, in the words of the work board. */
import type { Presence } from '../../jobs/database/presence.ts';
import type { OpenWork, OpenWorkStore } from '../../jobs/store/open-work.ts';
import { isOver, type Work, workSchema } from '../contract/work.ts';

const formSchema = workSchema.pick({ kind: true, taken: true });

function asWork({ id, jobId, startedAt, kind, taken }: OpenWork, state: 'running' | 'interrupted'): Work | undefined {
  // A newer program may know more kinds of work.
  const form = formSchema.safeParse(taken === null ? { kind } : { kind, taken });
  return form.success ? { id, jobId, startedAt, ...form.data, state, fraction: 0, words: state } : undefined;
}

export class WorkMarks {
  readonly #store: OpenWorkStore;
  readonly #program: number;

  constructor(store: OpenWorkStore, { program }: Pick<Presence, 'program'>) {
    this.#store = store;
    this.#program = program;
  }

  /** Kept before the work begins; it takes the place of what was interrupted of the same kind. */
  begun({ id, jobId, kind, taken, startedAt }: Work): Promise<void> {
    return this.#store.begin(this.#program, { id, jobId, kind, taken: taken ?? null, startedAt });
  }

  ended(id: string): Promise<void> {
    return this.#store.end(id);
  }

  /** What other servers do at this job, and what one that is gone left undone. */
  async ofOthers(where: { readonly jobId: string } | { readonly id: string }): Promise<readonly Work[]> {
    const found = await this.#store.ofOthers(this.#program, where);
    return found.flatMap((work) => asWork(work, work.isAlive ? 'running' : 'interrupted') ?? []);
  }

  /** Whoever has read of it need not read of it again. */
  async dismiss(id: string): Promise<Work | undefined> {
    const dismissed = await this.#store.dismiss(this.#program, id);
    const work = dismissed && asWork(dismissed, 'interrupted');
    return work && { ...work, state: 'cancelled', words: 'cancelled' };
  }
}

/** How work of another server stands: what it last said of it, where that is later than its mark. */
export const latest = (mark: Work, said: Work | undefined): Work =>
  said !== undefined && (mark.state === 'running' || isOver(said)) ? said : mark;
