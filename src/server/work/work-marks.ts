/**
 * Which work is under way, kept where a restart finds it: work that a server did not end is then told as interrupted,
 * with the way to start it again, in place of vanishing.
 */
import { z } from 'zod';
import type { SettingsStore } from '../../jobs/store/settings.ts';
import { TAKEN } from '../contract/recordings.ts';
import { WORK_KINDS, type Work } from '../contract/work.ts';

const NAME = 'open work';
/** Nobody looks at older ones (judgement). */
const MOST_KEPT = 100;

const marksSchema = z.array(
  z.strictObject({
    id: z.uuid(),
    kind: z.enum(WORK_KINDS),
    jobId: z.uuid(),
    startedAt: z.iso.datetime(),
    taken: z.enum(TAKEN).exactOptional(),
  }),
);
type Mark = z.infer<typeof marksSchema>[number];

export class WorkMarks {
  readonly #settings: SettingsStore;
  /** Of servers before this one. */
  #interrupted: readonly Mark[];
  readonly #open = new Map<string, Mark>();
  #writing: Promise<void> = Promise.resolve();

  private constructor(settings: SettingsStore, interrupted: readonly Mark[]) {
    this.#settings = settings;
    this.#interrupted = interrupted;
  }

  static async open(settings: SettingsStore): Promise<WorkMarks> {
    return new WorkMarks(settings, (await settings.read(NAME, marksSchema)) ?? []);
  }

  /** Kept before the work begins; it takes the place of what was interrupted of the same kind. */
  begun({ id, kind, jobId, startedAt, taken }: Work): Promise<void> {
    this.#open.set(id, { id, kind, jobId, startedAt, ...(taken === undefined ? {} : { taken }) });
    this.#interrupted = this.#interrupted.filter((mark) => mark.jobId !== jobId || mark.kind !== kind);
    return this.#write();
  }

  ended(id: string): Promise<void> {
    this.#open.delete(id);
    return this.#write();
  }

  interruptedOf(jobId: string): readonly Work[] {
    return this.#interrupted.filter((mark) => mark.jobId === jobId).map(asWork);
  }

  interrupted(id: string): Work | undefined {
    const mark = this.#interrupted.find((each) => each.id === id);
    return mark && asWork(mark);
  }

  /** Whoever has read of it need not read of it again. */
  async dismiss(id: string): Promise<Work | undefined> {
    const work = this.interrupted(id);
    if (work === undefined) return undefined;
    this.#interrupted = this.#interrupted.filter((mark) => mark.id !== id);
    await this.#write();
    return { ...work, state: 'cancelled', words: 'cancelled' };
  }

  /** One after the other: each writes the whole list. */
  #write(): Promise<void> {
    const after = this.#writing.then(() => {
      const marks = [...this.#interrupted, ...this.#open.values()].slice(-MOST_KEPT);
      return marks.length === 0
        ? this.#settings.remove(NAME)
        : this.#settings.write({ name: 'workbench' }, NAME, marks);
    });
    this.#writing = after.catch(() => undefined);
    return after;
  }
}

const asWork = (mark: Mark): Work => ({ ...mark, state: 'interrupted', fraction: 0, words: 'interrupted' });
