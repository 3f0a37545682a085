/**
 * Long work by id: how far it is, what became of it, and the way to cancel it. Lives as long as the server does; what a
 * server before this one did not end is told as interrupted.
 */
import { randomUUID } from 'node:crypto';
import { asRefusal } from '../as-refusal.ts';
import { isOver, type Work } from '../contract/work.ts';
import { Refusal } from '../refusal.ts';
import type { Bell } from './bell.ts';
import type { ProgressNote } from './tasks.ts';
import type { WorkMarks } from './work-marks.ts';

/** What is over can be asked for this long, so that a page that was away learns the end. */
const KEPT_MS = 10 * 60_000;
/** Progress is told at most this often for each work. */
const TELL_EVERY_MS = 100;
/** Waiting work of one job beyond this is refused (judgement). */
const MOST_OPEN_PER_JOB = 4;

interface Entry {
  work: Work;
  readonly sameAs: string;
  readonly stop: AbortController;
  toldAt: number;
  readonly ended: Promise<void>;
}

export interface NewWork {
  readonly kind: Work['kind'];
  readonly jobId: string;
  /** Work with the same inputs; what runs already is not started twice. */
  readonly inputsSha256: string;
  readonly taken?: Work['taken'];
  /** Resolves to the id of what it made. */
  readonly run: (signal: AbortSignal, onProgress: (note: ProgressNote) => void) => Promise<string>;
  /** Told of failures that are the program's own. */
  readonly onFault?: (error: unknown) => void;
}

export class WorkBoard {
  readonly #entries = new Map<string, Entry>();
  readonly #bell: Bell;
  readonly #marks: WorkMarks;
  #isClosing = false;

  constructor(bell: Bell, marks: WorkMarks) {
    this.#bell = bell;
    this.#marks = marks;
  }

  start({ kind, jobId, inputsSha256, taken, run, onFault = () => {} }: NewWork): Work {
    const sameAs = `${kind} ${jobId} ${inputsSha256}`;
    const open = [...this.#entries.values()].filter((entry) => entry.work.jobId === jobId && !isOver(entry.work));
    const same = open.find((entry) => entry.sameAs === sameAs);
    if (same !== undefined) return same.work;
    if (open.length >= MOST_OPEN_PER_JOB) {
      throw new Refusal('too-many', 'There is enough work waiting for this job already.', {
        advice: 'Wait for it, or cancel some of it.',
      });
    }
    const id = randomUUID();
    const stop = new AbortController();
    const work: Work = {
      id,
      kind,
      jobId,
      state: 'waiting',
      fraction: 0,
      words: 'waiting for its turn',
      startedAt: new Date().toISOString(),
      ...(taken === undefined ? {} : { taken }),
    };
    const ended = this.#marks
      .begun(work)
      // Without its mark the work is as good; only a restart would not tell of it.
      .catch(onFault)
      .then(() => run(stop.signal, (note) => this.#progress(id, note)))
      .then(
        (resultId) => this.#end(id, { state: 'done', fraction: 1, words: 'done', resultId }),
        (error: unknown) => {
          if (stop.signal.aborted) return this.#end(id, { state: 'cancelled', words: 'cancelled' });
          const { facts } = asRefusal(error);
          if (facts.code === 'internal') onFault(error);
          this.#end(id, { state: 'failed', words: facts.message, error: facts });
        },
      )
      // What the end of the server cancels was not ended by anybody.
      .then(() => (this.#isClosing && stop.signal.aborted ? undefined : this.#marks.ended(id).catch(onFault)));
    this.#entries.set(id, { work, sameAs, stop, toldAt: 0, ended });
    this.#bell.ring(jobId, { event: 'work', data: work });
    return work;
  }

  read(id: string): Work | undefined {
    return this.#entries.get(id)?.work ?? this.#marks.interrupted(id);
  }

  /** What is under way, and what was interrupted. */
  ofJob(jobId: string): readonly Work[] {
    const open = [...this.#entries.values()].map(({ work }) => work);
    return [...this.#marks.interruptedOf(jobId), ...open.filter((work) => work.jobId === jobId && !isOver(work))];
  }

  /** Cancels and waits until it has ended, so that the answer is the truth; what was interrupted is not told again. */
  async cancel(id: string): Promise<Work | undefined> {
    const entry = this.#entries.get(id);
    if (entry === undefined) return this.#marks.dismiss(id);
    if (!isOver(entry.work)) {
      entry.stop.abort();
      await entry.ended;
    }
    return entry.work;
  }

  async close(): Promise<void> {
    this.#isClosing = true;
    await Promise.all([...this.#entries.keys()].map((id) => this.cancel(id)));
  }

  #progress(id: string, { fraction, words }: ProgressNote): void {
    const entry = this.#entries.get(id);
    if (entry === undefined || isOver(entry.work)) return;
    entry.work = {
      ...entry.work,
      state: 'running',
      fraction: Math.min(1, Math.max(entry.work.fraction, fraction)),
      words,
    };
    const now = performance.now();
    if (now - entry.toldAt < TELL_EVERY_MS) return;
    entry.toldAt = now;
    this.#bell.ring(entry.work.jobId, { event: 'work', data: entry.work });
  }

  #end(id: string, what: Partial<Work>): void {
    const entry = this.#entries.get(id);
    if (entry === undefined) return;
    entry.work = { ...entry.work, ...what };
    this.#bell.ring(entry.work.jobId, { event: 'work', data: entry.work });
    setTimeout(() => this.#entries.delete(id), KEPT_MS).unref();
  }
}
