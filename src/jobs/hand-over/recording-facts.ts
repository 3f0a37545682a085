/** What the hand-over says of a recording that no finding was made from: read from the recording itself. */
import { findPhases } from '../../recording/phases.ts';
import { findProcedure } from '../../recording/procedure.ts';
import type { Quality } from '../../recording/quality.ts';
import type { Recording } from '../../recording/recording.ts';
import { changesOfCommands } from '../../report/command-changes.ts';
import type { HandOverTrace } from '../../report/hand-over/hand-over.ts';
import { qualityInWords } from '../../report/quality-words.ts';
import { recordedConditions } from '../../report/recorded-conditions.ts';
import type { SheetRecording } from '../../report/sheet.ts';
import type { RecordingEntry } from '../record/job.ts';

/** A recording of the job as read from its file. */
export interface RecordingData {
  /** Of the job's entry. */
  readonly id: string;
  readonly recording: Recording;
  readonly quality: Quality;
}

/** The same facts that a finding keeps of its recordings. */
export function recordingFacts(entry: RecordingEntry, { recording, quality }: RecordingData): SheetRecording {
  return {
    label: entry.label,
    sha256: entry.sha256,
    samples: recording.timeS.length,
    durationS: quality.time.durationS,
    procedure: entry.facts?.procedure ?? findProcedure(recording).kind,
    phases: findPhases(recording, entry.phases ?? []),
    quality: [...qualityInWords(quality)],
    warnings: [],
    conditions: recordedConditions(recording),
    commands: changesOfCommands(recording),
  };
}

/** Twice the points that a figure at its widest can show apart. */
const MOST_POINTS = 1400;

export function traceOf({ timeS, channels }: Recording, procedure: SheetRecording['procedure']): HandOverTrace | null {
  const { pumpPressureGaugePa, tankPressureGaugePa, canisterPressureGaugePa } = channels;
  const values =
    (procedure === 'pump-run' ? pumpPressureGaugePa : undefined) ??
    tankPressureGaugePa ??
    pumpPressureGaugePa ??
    canisterPressureGaugePa;
  if (values === undefined) return null;
  const every = Math.max(1, Math.ceil(timeS.length / MOST_POINTS));
  const kept = Array.from(timeS.keys()).filter((i) => i % every === 0);
  return { timeS: kept.map((i) => timeS[i] ?? 0), gaugePa: kept.map((i) => values[i] ?? Number.NaN) };
}
