/** One recording of the job: how it is changed, and when what depends on it must be read anew. */
import { useRef } from 'react';
import type { RecordingEntry } from '../../jobs/record/job.ts';
import { useSheet } from '../sheet/sheet-context.ts';

export interface EntryEditor {
  readonly isReadOnly: boolean;
  change(next: (entry: RecordingEntry) => RecordingEntry): void;
  remove(): void;
  /** Resolves when nothing waits to be saved. */
  flush(): Promise<void>;
}

export function useEntry(id: string): EntryEditor {
  const { job, save, flush, isReadOnly } = useSheet();
  const latest = useRef(job);
  latest.current = job;
  return {
    isReadOnly,
    flush,
    change: (next) =>
      save(
        'recordings',
        latest.current.recordings.map((entry) => (entry.id === id ? next(entry) : entry)),
      ),
    remove: () =>
      save(
        'recordings',
        latest.current.recordings.filter((entry) => entry.id !== id),
      ),
  };
}

/** Without a key: absent, where the record has no place for "nothing". */
export function without<T extends object, Key extends keyof T>(value: T, key: Key): Omit<T, Key> {
  const { [key]: _, ...rest } = value;
  return rest;
}

/** Changes when the server would read the recording in another way, not before the change is saved. */
export function useReadingKey(entry: RecordingEntry): string {
  const { state, job } = useSheet();
  const now = JSON.stringify([entry.id, entry.mapping, entry.facts?.procedure, job.car?.pressureSensor]);
  const key = useRef(now);
  if (state === 'saved') key.current = now;
  return key.current;
}
