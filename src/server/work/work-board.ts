/**
 * Long work by id: how far it is, what became of it, and the way to cancel it. Lives as long as the server does; what
 * another server on the same database does is told as well, and what one that is gone did not end as interrupted.
 */
import { randomUUID } from 'node:crypto';
import { asRefusal } from '../as-refusal.ts';
import { isOver, type Work } from '../contract/work.ts';
import { Refusal } from '../refusal.ts';
import type { Bell } from './bell.ts';
import type { Neighbours } from './neighbours.ts';
import type { ProgressNote } from './tasks.ts';
import { latest, type WorkMarks } from './work-marks.ts';

/** What is over can be asked for this long, so that a page that was away learns the end. */
const KEPT_MS = 10 * 60_000;
/** Progress is told at most this often for each work. */
const TELL_EVERY_MS = 100;
/** Waiting work of one job beyond this is refused (judgement). */
const MOST_OPEN_PER_JOB = 4;
/** Another server is given this long to end what it was asked to end. */
const CANCEL_PATIENCE_MS = 10_000;

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
  /** What other servers last said of their work. */
  readonly #others = new Map<string, Work>();
  readonly #bell: Bell;
  readonly #marks: WorkMarks;
  readonly #neighbours: Neighbours;
  #isClosing = false;

  constructor(bell: Bell, marks: WorkMarks, neighbours: Neighbours) {
    this.#bell = bell;
    this.#marks = marks;
    this.#neighbours = neighbours;
    neighbours.hear((notice) => {
      if (notice.event === 'work') this.#heard(notice.data);
      if (notice.event === 'cancel' && this.#entries.has(notice.id)) void this.cancel(notice.id);
    });
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
          if (stop.signal.aborted) {
            // What the end of the server cancels was not ended by anybody.
            const state = this.#isClosing ? 'interrupted' : 'cancelled';
            return this.#end(id, { state, words: state });
          }
          const { facts } = asRefusal(error);
          if (facts.code === 'internal') onFault(error);
          this.#end(id, { state: 'failed', words: facts.message, error: facts });
        },
      )
      .then(() => (this.#isClosing && stop.signal.aborted ? undefined : this.#marks.ended(id).catch(onFault)));
    this.#entries.set(id, { work, sameAs, stop, toldAt: 0, ended });
    this.#bell.ring(jobId, { event: 'work', data: work });
    return work;
  }

  async read(id: string): Promise<Work | undefined> {
    const own = this.#entries.get(id)?.work;
    if (own !== undefined) return own;
    const [mark] = await this.#marks.ofOthers({ id });
    const said = this.#others.get(id);
    if (mark !== undefined) return latest(mark, said);
    return said !== undefined && isOver(said) ? said : undefined;
  }

  /** What is under way, here or on another server, and what was interrupted. */
  async ofJob(jobId: string): Promise<readonly Work[]> {
    const marks = await this.#marks.ofOthers({ jobId });
    const others = marks
      .map((mark) => latest(mark, this.#others.get(mark.id)))
      .filter((work) => !isOver(work) || work.state === 'interrupted');
    const own = [...this.#entries.values()].map(({ work }) => work);
    return [...others, ...own.filter((work) => work.jobId === jobId && !isOver(work))];
  }

  /** Cancels and waits until it has ended, so that the answer is the truth; what was interrupted is not told again. */
  async cancel(id: string): Promise<Work | undefined> {
    const entry = this.#entries.get(id);
    if (entry === undefined) return this.#cancelElsewhere(id);
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

  async #cancelElsewhere(id: string): Promise<Work | undefined> {
    const work = await this.read(id);
    if (work === undefined || (isOver(work) && work.state !== 'interrupted')) return work;
    if (work.state === 'interrupted') {
      this.#others.delete(id);
      return this.#marks.dismiss(id);
    }
    const end = performance.now() + CANCEL_PATIENCE_MS;
    this.#neighbours.tell({ event: 'cancel', id });
    for (;;) {
      await new Promise((resolve) => setTimeout(resolve, 100));
      const now = await this.read(id);
      if (now === undefined || isOver(now) || performance.now() > end) return now;
    }
  }

  #heard(work: Work): void {
    this.#others.set(work.id, work);
    if (isOver(work)) setTimeout(() => this.#others.delete(work.id), KEPT_MS).unref();
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
