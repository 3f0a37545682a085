/** What a store of jobs must do; one contract suite holds for every PostgreSQL. */
import type {
  HistoryEntry,
  Job,
  JobFinding,
  JobSummary,
  RecordingEntry,
  Section,
  SectionName,
  WAITING,
} from './record/job.ts';

/** Who makes a change; `name` is written into the history. */
export interface Actor {
  readonly name: string;
  readonly userId?: string;
}

export interface JobQuery {
  /** Words that must all occur in number, vehicle, registration, complaint or codes; case does not matter. */
  readonly words?: string;
  readonly waitsFor?: (typeof WAITING)[number];
  readonly closed?: boolean;
  /** Page: rows changed before this moment. */
  readonly before?: string;
  /** 1..200 */
  readonly limit?: number;
}

export interface NewJob {
  readonly demo?: boolean;
  readonly sections: Partial<{ readonly [Name in SectionName]: Section<Name> }>;
}

export interface SectionChange<Name extends SectionName = SectionName> {
  readonly section: Name;
  readonly value: Section<Name>;
}

/** A raw file that lies in the file store, flushed to disk, before a row may name it. */
export interface KeptFile {
  readonly sha256: string;
  readonly bytes: number;
}

/** Somebody else changed the job since `version`: nothing was written, `current` is what stands. */
export class VersionConflict extends Error {
  readonly current: Job;
  constructor(current: Job) {
    super(`Job ${current.number} has changed since it was opened (it is now at version ${current.version}).`);
    this.name = 'VersionConflict';
    this.current = current;
  }
}

export class NoSuchJob extends Error {
  constructor(id: string) {
    super(`There is no job ${id}.`);
    this.name = 'NoSuchJob';
  }
}

/** Every change has been taken back, or none was made. */
export class NothingToUndo extends Error {
  readonly current: Job;
  constructor(current: Job) {
    super(`Job ${current.number} has no change left that could be taken back.`);
    this.name = 'NothingToUndo';
    this.current = current;
  }
}

export interface JobStore {
  list(query: JobQuery): Promise<readonly JobSummary[]>;
  create(actor: Actor, job: NewJob): Promise<Job>;
  /** @throws NoSuchJob */
  read(id: string): Promise<Job>;
  /** Replaces one section. @throws VersionConflict when the job is no longer at `version`; NoSuchJob */
  change(id: string, actor: Actor, version: number, change: SectionChange): Promise<Job>;
  /** Takes back the newest change of a section that has not been taken back yet; writes a new version. @throws VersionConflict; NothingToUndo */
  undo(id: string, actor: Actor, version: number): Promise<Job>;
  setClosed(id: string, actor: Actor, version: number, closed: boolean): Promise<Job>;
  /** Adds a recording whose file is kept already; no version is asked for, since adding loses nothing. */
  addRecording(id: string, actor: Actor, entry: RecordingEntry): Promise<Job>;
  addAttachment(id: string, actor: Actor, entry: Job['attachments'][number]): Promise<Job>;
  addFinding(id: string, actor: Actor, finding: Omit<JobFinding, 'outdated'>): Promise<Job>;
  addHandOver(id: string, actor: Actor, handOver: Job['handOvers'][number]): Promise<Job>;
  history(id: string): Promise<readonly HistoryEntry[]>;
  /** Takes a whole job in, as exported elsewhere; it gets a new id and number when its own are taken.
   *  `files`: raw files, kept already, that only its history or its hand-overs name. */
  import(actor: Actor, job: Job, history: readonly HistoryEntry[], files?: readonly KeptFile[]): Promise<Job>;
  /** Removes every demo job. Returns how many. */
  removeDemo(actor: Actor): Promise<number>;
}

/** Raw files by hash, beside the database. */
export interface FileStore {
  /** Streams to a temporary file, flushes, renames to its hash. The same content is kept once. */
  keep(pieces: AsyncIterable<Uint8Array>): Promise<KeptFile>;
  open(sha256: string): AsyncIterable<Uint8Array>;
  path(sha256: string): string;
  has(sha256: string): Promise<boolean>;
  /** In bytes. */
  size(sha256: string): Promise<number>;
}
