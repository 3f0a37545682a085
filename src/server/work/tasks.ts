/** What goes to a worker thread and what comes back: plain data, since that is all that crosses. */
import type { MessagePort } from 'node:worker_threads';
import type { HandCheck } from '../../diagnosis/diagnose.ts';
import type { Complaint } from '../../diagnosis/priors/root-causes.ts';
import type { Phase } from '../../recording/recording.ts';
import type { StoredSheet } from '../../report/sheet.ts';
import type { Car } from '../../system/car.ts';
import type { ErrorFacts } from '../contract/error.ts';
import type { Preview } from '../contract/recordings.ts';
import type { HandOverInputs } from '../hand-over/hand-over-task.ts';
import type { FollowTask, SimulatedCarTask } from '../live/live-tasks.ts';
import type { ReadingInputs } from '../recordings/parsed.ts';

export interface ProgressNote {
  readonly fraction: number;
  readonly words: string;
}

interface Reporting {
  readonly port: MessagePort;
}

export interface ReadTask extends Reporting {
  /** Folder of what is read once. */
  readonly folder: string;
  readonly inputs: ReadingInputs;
}

export interface FindingRecording {
  readonly label: string;
  readonly reading: ReadingInputs;
  readonly phases: readonly Phase[];
}

export interface FindingTask extends Reporting {
  readonly car: Car;
  readonly carSha256: string;
  readonly recordings: readonly FindingRecording[];
  readonly complaints: readonly Complaint[];
  readonly codes: readonly string[];
  readonly handChecks: readonly HandCheck[];
  readonly program: string;
  readonly madeAt: string;
}

export interface HandOverTask extends Reporting {
  readonly inputs: HandOverInputs;
  readonly form: 'pdf' | 'html';
}

/** An error class does not survive the way between threads; its words do. */
export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: ErrorFacts };

export interface Tasks {
  readonly read: { readonly task: ReadTask; readonly value: Preview };
  readonly handOver: { readonly task: HandOverTask; readonly value: Uint8Array };
  readonly finding: { readonly task: FindingTask; readonly value: StoredSheet };
}
export type TaskName = keyof Tasks;

/** Work that goes on until its port is closed, beside a live recording. */
export interface Companions {
  readonly follow: FollowTask;
  readonly simulatedCar: SimulatedCarTask;
}
export type CompanionName = keyof Companions;
export type CompanionTask<Name extends CompanionName> = Companions[Name] & Reporting;
