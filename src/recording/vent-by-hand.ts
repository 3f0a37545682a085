/** The vent valve's command where no channel carries it: from times that a person gives. */
import type { RecordingNotes, ShutTime } from './recording.ts';

/** 1 where the vent was shut, else 0. */
export const ventAt = (timeS: Float64Array, shut: readonly ShutTime[]): Float64Array =>
  timeS.map((t) => (shut.some(({ fromS, toS }) => t >= fromS && (toS === undefined || t <= toS)) ? 1 : 0));

/** Notes on the file's own clock, moved to the recording's, which begins with its first sample. */
export function shiftNotes(notes: RecordingNotes, firstS: number): RecordingNotes {
  const { shutOffTimesS, ventShutS } = notes;
  return {
    ...notes,
    ...(shutOffTimesS === undefined ? {} : { shutOffTimesS: shutOffTimesS.map((t) => t - firstS) }),
    ...(ventShutS === undefined ? {} : { ventShutS: ventShutS.map((span) => shiftSpan(span, firstS)) }),
  };
}

const shiftSpan = ({ fromS, toS }: ShutTime, firstS: number): ShutTime => ({
  fromS: fromS - firstS,
  ...(toS === undefined ? {} : { toS: toS - firstS }),
});
