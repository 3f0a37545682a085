/** What a recording that could be made is worth: how much of what is open it is expected to settle. */
import { expectedBits, type RecordingQuestion, type SimulatedRecording } from './simulate-recordings.ts';

export interface RecordingWorth {
  readonly id: SimulatedRecording['id'];
  /** Information expected of it, as a fraction of what is open. */
  readonly settles: number;
}

/** @returns best first; nothing where nothing is open */
export function worthOf(
  recordings: readonly SimulatedRecording[],
  causes: RecordingQuestion['causes'],
): readonly RecordingWorth[] {
  const open = causes.reduce((sum, { probability: p }) => sum - (p > 0 ? p * Math.log2(p) : 0), 0);
  if (!(open > 0)) return [];
  return recordings
    .map((recording) => ({ id: recording.id, settles: Math.min(1, expectedBits(recording, causes) / open) }))
    .sort((a, b) => b.settles - a.settles);
}
