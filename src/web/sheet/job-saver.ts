/**
 * Saves a sheet as it is written, and loses nothing.
 *
 * What is typed is a draft of a whole section beside the job as the server last told it. One draft at a time is
 * sent, with the version that it stands on. Was another section changed elsewhere, the draft is sent again on the
 * new version; was the same one changed, both stand until the person chooses. With no server, drafts wait.
 */
import type { Job, Section, SectionName } from '../../jobs/record/job.ts';
import { Conflict, Unreachable } from '../api/client.ts';
import { isSame } from './same.ts';
import type { SaveState } from './sheet-context.ts';

export interface Draft {
  readonly value: unknown;
  /** The section as it stood when writing began. */
  readonly base: unknown;
}
export type Drafts = Readonly<Partial<Record<SectionName, Draft>>>;

export interface SaverWires {
  change(job: Job, section: SectionName, value: unknown, isLeaving: boolean): Promise<Job>;
  read(id: string): Promise<Job>;
  /** Drafts outlive a closed window. */
  keepDrafts(id: string, drafts: Drafts): void;
  /** Sections that somebody else changed and that are shown now. */
  tellElsewhere(sections: readonly SectionName[]): void;
}

export interface SaverView {
  /** As the server has it, with the drafts laid over. */
  readonly job: Job;
  readonly state: SaveState;
  readonly conflict: { readonly section: SectionName; readonly mine: unknown; readonly theirs: unknown } | null;
  readonly refused: { readonly section: SectionName; readonly error: unknown } | null;
}

/** After this pause in typing a draft is sent (judgement: short enough to lose nothing, long enough for a word). */
const PAUSE_MS = 600;
const RETRY_MS = 3000;
const OWN_ANSWER_MS = 400;

export class JobSaver {
  private server: Job;
  private drafts = new Map<SectionName, Draft>();
  private refused: SaverView['refused'] = null;
  private conflicts = new Set<SectionName>();
  private isAway = false;
  private running: Promise<void> | null = null;
  private ownRequests = 0;
  private heardVersion = 0;
  private timer: ReturnType<typeof setTimeout> | null = null;
  private readonly listeners = new Set<() => void>();
  private readonly wires: SaverWires;
  private readonly sectionNames: readonly SectionName[];
  private view: SaverView;

  constructor(job: Job, kept: Drafts, sectionNames: readonly SectionName[], wires: SaverWires) {
    this.server = job;
    this.wires = wires;
    this.sectionNames = sectionNames;
    for (const name of sectionNames) {
      const draft = kept[name];
      if (draft !== undefined) this.drafts.set(name, draft);
    }
    this.rebase();
    this.view = this.look();
    if (this.drafts.size > 0) this.later(0);
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
  readonly getView = (): SaverView => this.view;

  save<Name extends SectionName>(section: Name, value: Section<Name>): void {
    const before = this.drafts.get(section);
    this.drafts.set(section, { value, base: before === undefined ? this.server[section] : before.base });
    if (this.refused?.section === section) this.refused = null;
    this.tell();
    this.later(PAUSE_MS);
  }

  /** Sends what waits, now. */
  flush(isLeaving = false): Promise<void> {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
    this.running ??= this.send(isLeaving).finally(() => {
      this.running = null;
      void this.catchUp();
    });
    return this.running;
  }

  /** A request of our own that answers with the job; news of it by another way are no news. */
  async own(request: (job: Job) => Promise<Job>): Promise<void> {
    await this.flush();
    this.ownRequests++;
    try {
      this.adopt(await request(this.server));
    } catch (error) {
      if (error instanceof Conflict) this.adopt(error.current, true);
      throw error;
    } finally {
      this.ownRequests--;
      void this.catchUp();
    }
  }

  /** Takes a newer job from the server in. */
  adopt(job: Job, isElsewhere = false): void {
    if (job.version < this.server.version) return;
    const changed = this.sectionNames.filter((name) => !isSame(job[name], this.server[name]));
    this.server = job;
    this.rebase();
    this.tell();
    const shown = changed.filter((name) => !this.drafts.has(name));
    if (isElsewhere && shown.length > 0) this.wires.tellElsewhere(shown);
  }

  /** The server said that the job is at a version. */
  heard(version: number): void {
    this.heardVersion = Math.max(this.heardVersion, version);
    // The answer to a request of this page's own may still be on its way, and is no news.
    setTimeout(() => void this.catchUp(), OWN_ANSWER_MS);
  }

  /** The server may be back, or may have changed while nobody listened. */
  async lookAgain(): Promise<void> {
    if (this.drafts.size > 0) await this.flush();
    try {
      this.adopt(await this.wires.read(this.server.id), true);
    } catch {
      // Still away: what is shown stays.
    }
  }

  choose(which: 'mine' | 'theirs'): void {
    const section = this.view.conflict?.section;
    const draft = section && this.drafts.get(section);
    if (section === undefined || draft === undefined) return;
    this.conflicts.delete(section);
    if (which === 'theirs') this.drafts.delete(section);
    else this.drafts.set(section, { value: draft.value, base: this.server[section] });
    this.tell();
    void this.flush();
  }

  /** Gives up a draft that the server does not take. */
  takeBack(): void {
    if (this.refused === null) return;
    this.drafts.delete(this.refused.section);
    this.refused = null;
    this.tell();
    void this.flush();
  }

  close(): void {
    void this.flush(true);
    if (this.timer !== null) clearTimeout(this.timer);
    this.listeners.clear();
  }

  private later(ms: number): void {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.flush(), ms);
  }

  private nextToSend(): [SectionName, Draft] | undefined {
    return [...this.drafts].find(([name]) => !this.conflicts.has(name) && this.refused?.section !== name);
  }

  private async send(isLeaving: boolean): Promise<void> {
    for (let next = this.nextToSend(); next !== undefined; next = this.nextToSend()) {
      const [section, draft] = next;
      this.tell(true);
      try {
        const job = await this.wires.change(this.server, section, draft.value, isLeaving);
        this.isAway = false;
        // Typed further meanwhile: the rest stands on what was just saved.
        const now = this.drafts.get(section);
        if (now === draft) this.drafts.delete(section);
        else if (now !== undefined) this.drafts.set(section, { value: now.value, base: job[section] });
        this.adopt(job);
      } catch (error) {
        if (error instanceof Conflict) {
          this.isAway = false;
          this.adopt(error.current, true);
        } else if (error instanceof Unreachable) {
          this.isAway = true;
          this.later(RETRY_MS);
          break;
        } else {
          this.refused = { section, error };
        }
      }
    }
    this.tell();
  }

  /** Reads the job anew when others are ahead of us and nothing of ours is under way. */
  private async catchUp(): Promise<void> {
    if (this.running !== null || this.ownRequests > 0 || this.heardVersion <= this.server.version) return;
    try {
      this.adopt(await this.wires.read(this.server.id), true);
    } catch {
      // Said again with the next change, or when the connection is back.
    }
  }

  /** Drafts against the job as it now stands: done, still ours to send, or in conflict. */
  private rebase(): void {
    for (const [name, draft] of this.drafts) {
      const theirs = this.server[name];
      if (isSame(theirs, draft.value)) {
        this.drafts.delete(name);
        this.conflicts.delete(name);
      } else if (!isSame(theirs, draft.base)) {
        this.conflicts.add(name);
      } else {
        this.conflicts.delete(name);
      }
    }
  }

  private tell(isSending = false): void {
    this.wires.keepDrafts(this.server.id, Object.fromEntries(this.drafts));
    this.view = this.look(isSending);
    for (const listener of this.listeners) listener();
  }

  private look(isSending = this.running !== null && this.nextToSend() !== undefined): SaverView {
    const over: Record<string, unknown> = {};
    for (const [name, { value }] of this.drafts) over[name] = value;
    const [inConflict] = this.conflicts;
    const state: SaveState =
      this.refused !== null
        ? 'refused'
        : this.drafts.size === 0
          ? 'saved'
          : this.isAway
            ? 'queued'
            : isSending
              ? 'saving'
              : 'unsaved';
    return {
      job: { ...this.server, ...over } as Job,
      state,
      conflict:
        inConflict === undefined
          ? null
          : { section: inConflict, mine: this.drafts.get(inConflict)?.value, theirs: this.server[inConflict] },
      refused: this.refused,
    };
  }
}
