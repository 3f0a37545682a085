/** What of a capture goes into the job as a reading of its monitor. */
import type { RecordingEntry } from '../../jobs/record/job.ts';
import type { MonitorReading } from '../../jobs/record/monitor.ts';
import type { CaptureFacts } from '../../server/contract/recordings.ts';

const MOST_CODES = 64;
const MOST_RESULTS = 64;
/** Monitors of service $06 that are of the evaporative system. */
const isEvaporative = ({ monitor }: CaptureFacts['results'][number]): boolean => monitor !== undefined;

export function readingFrom(
  { at, status, codes, codesRead, results }: CaptureFacts,
  entry: RecordingEntry,
  made: Pick<MonitorReading, 'id' | 'by'>,
): MonitorReading {
  return {
    ...made,
    at: at ?? entry.receivedAt,
    source: 'capture',
    fileName: entry.fileName,
    recordingId: entry.id,
    taken: entry.taken,
    status,
    codes: codes.slice(0, 2 * MOST_CODES).map(({ code, status: which }) => ({ code, status: which })),
    codesRead: [...codesRead],
    results: results.filter(isEvaporative).slice(0, MOST_RESULTS),
  };
}
