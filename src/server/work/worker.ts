/** Runs in a worker thread: everything that takes longer than an answer may, and what goes on beside a live recording. */
import { getPriority, setPriority } from 'node:os';
import { isMainThread } from 'node:worker_threads';
import { MAX_UNPACKED_BYTES } from '../contract/paths.ts';
import { hasVapourPressure, makeSheetFrom } from '../finding/make-sheet.ts';
import { progressInWords } from '../finding/progress-words.ts';
import { makeHandOver } from '../hand-over/make-hand-over.ts';
import { readAndKeep, readReading } from '../recordings/parsed.ts';
import { type ReadFile, UnreadableFile } from '../recordings/read-file.ts';
import { Refusal } from '../refusal.ts';
import type { CompanionTask, Outcome, ProgressNote, TaskName, Tasks } from './tasks.ts';

/** The thread gives way to the one that answers: on Linux, where 0 means the thread; elsewhere it means the program. */
const NICENESS = 5;
if (!isMainThread && process.platform === 'linux') setPriority(0, getPriority(0) + NICENESS);

/** Share of a finding that reading takes, for the progress (judgement). */
const READING_SHARE = 0.15;

async function outcome<T>(work: () => Promise<T>): Promise<Outcome<T>> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, error: error.facts };
    if (error instanceof UnreadableFile) {
      return { ok: false, error: { code: 'unreadable', message: error.message, ...error.facts } };
    }
    throw error;
  }
}

type Handler<Name extends TaskName> = (task: Tasks[Name]['task']) => Promise<Outcome<Tasks[Name]['value']>>;

const reporter =
  ({ port }: { readonly port: Tasks[TaskName]['task']['port'] }) =>
  (fraction: number, words: string): void => {
    const note: ProgressNote = { fraction, words };
    port.postMessage(note);
  };

export const read: Handler<'read'> = (task) => {
  const report = reporter(task);
  return outcome(() =>
    readAndKeep(task.folder, task.inputs, (fraction) => report(fraction, `reading ${task.inputs.fileName}`)),
  );
};

export const finding: Handler<'finding'> = (task) => {
  const report = reporter(task);
  return outcome(async () => {
    const reads: ReadFile[] = [];
    report(0, 'reading');
    for (const { label, reading } of task.recordings) {
      const file = await readReading(reading, {
        maxUnpackedBytes: MAX_UNPACKED_BYTES,
        onProgress: (fraction) =>
          report((READING_SHARE * (reads.length + fraction)) / task.recordings.length, `reading ${label}`),
      });
      if (!hasVapourPressure(file.recording)) {
        throw new Refusal('unreadable', `${label} has no pressure of the vapour system`, {
          file: label,
          found: `columns ${file.mapping.columns.map(({ column }) => column).join(', ')}`,
          expected:
            'a column with the pressure of tank, canister or pump module, or sensor volts and a car with the sensor’s range',
          advice: 'Say in its mapping which column holds the pressure, or leave this recording out of the finding.',
        });
      }
      reads.push({ ...file, recording: { ...file.recording, label } });
    }
    return makeSheetFrom({
      ...task,
      recordings: reads,
      phases: task.recordings.map(({ phases }) => phases),
      onProgress: (fraction, what) => report(READING_SHARE + (1 - READING_SHARE) * fraction, progressInWords(what)),
    });
  });
};

export const handOver: Handler<'handOver'> = (task) =>
  outcome(() => makeHandOver(task.inputs, task.form, reporter(task)));

// Each loads what it needs when it begins: other threads never do.
export const follow = async (task: CompanionTask<'follow'>): Promise<void> =>
  (await import('../live/follow.ts')).follow(task);
export const simulatedCar = async (task: CompanionTask<'simulatedCar'>): Promise<void> =>
  (await import('../live/simulated-car.ts')).simulatedCar(task);
