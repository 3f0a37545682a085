import { createContext, use } from 'react';
import type { Job, Section, SectionName } from '../../jobs/record/job.ts';
import type { RuleSettings } from '../../jobs/record/monitor-of-job.ts';
import type { Preview } from '../../server/contract/recordings.ts';
import type { Work } from '../../server/contract/work.ts';

export type SaveState = 'saved' | 'unsaved' | 'saving' | 'queued' | 'refused';

export interface SheetJob {
  /** The job with what was just written here, saved or not. */
  readonly job: Job;
  /** True for readers, shared links and closed jobs. */
  readonly isReadOnly: boolean;
  readonly state: SaveState;
  /** Running work of this job, and what ended since the page was opened. */
  readonly work: readonly Work[];
  /** Bytes of a recording for `decodeSamples` of the contract. */
  readSamples(recordingId: string): Promise<ArrayBuffer>;
  /** How a recording is understood. */
  readPreview(recordingId: string): Promise<Preview>;
  /** Inspection rules of the shop, as far as this job needs them; the same function for as long as the sheet is open. */
  readonly readRules: () => Promise<RuleSettings>;
  /** Shows the value at once, and saves it after a short pause; several quick changes are one. */
  save<Name extends SectionName>(section: Name, value: Section<Name>): void;
  /** Saves now what waits. Resolves when nothing waits any more, also when it was refused. */
  flush(): Promise<void>;
  /** Takes in recordings, photos, car files or job files. */
  takeIn(files: readonly File[], taken?: 'before-repair' | 'after-repair'): Promise<void>;
  /** A request outside the sheet answered with a newer job. */
  adopt(job: Job): void;
  /** Puts work that was just started among the rest. */
  follow(work: Work): void;
  undo(): Promise<void>;
  setClosed(closed: boolean): Promise<void>;
}

export const SheetContext = createContext<SheetJob | null>(null);

/** The job of this sheet, and how to change it. */
export function useSheet(): SheetJob {
  const sheet = use(SheetContext);
  if (sheet === null) throw new Error('useSheet() is called outside a sheet.');
  return sheet;
}
