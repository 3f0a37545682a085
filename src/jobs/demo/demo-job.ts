/** A job of the demo shop as it is told: what is typed in, which recordings it has, and how far it has come. */
import type { Job, RecordingEntry, Section } from '../record/job.ts';
import type { DemoCarName } from './cars.ts';
import type { DemoRecordingName } from './scenarios.ts';

export interface DemoRecordingUse {
  readonly name: DemoRecordingName;
  readonly label: string;
  readonly taken: RecordingEntry['taken'];
  readonly receivedAt: string;
  readonly facts?: NonNullable<RecordingEntry['facts']>;
}

/** A finding that ships with the demo shop: made by the generating script, from the recordings of one side. */
export interface DemoFinding {
  readonly taken: RecordingEntry['taken'];
  readonly madeAt: string;
}

type WithoutId<Entry> = Omit<Entry, 'id'>;

export interface DemoJob {
  readonly key: string;
  readonly openedAt: string;
  readonly complaint: Section<'complaint'>;
  readonly codes: Section<'codes'>;
  readonly vehicle: Section<'vehicle'>;
  readonly car: DemoCarName | null;
  readonly recordings: readonly DemoRecordingUse[];
  readonly findings: readonly DemoFinding[];
  readonly checks: readonly WithoutId<Job['checks'][number]>[];
  readonly repairs: readonly WithoutId<Job['repairs'][number]>[];
  readonly proof: Omit<NonNullable<Job['proof']>, 'before' | 'after'> | null;
  /** What the car said of its own tests; absent: it was not asked. */
  readonly readings?: readonly WithoutId<Section<'monitor'>['readings'][number]>[];
  readonly notes: readonly WithoutId<Job['notes'][number]>[];
  /** A hand-over document that ships beside it. */
  readonly handOver?: { readonly madeAt: string; readonly language: 'en' | 'de' };
}

/** Who works in the demo shop. */
export const DEMO_TECHNICIAN = 'Demo technician';
