/** What a bus capture said beside its samples, where it said anything. */
import type { CaptureReading } from '../../recording/bus/read-capture.ts';
import type { ChannelName } from '../../recording/recording.ts';
import type { CaptureFacts, Preview } from '../contract/recordings.ts';

const PRESSURES: readonly ChannelName[] = ['tankPressureGaugePa', 'pumpPressureGaugePa', 'canisterPressureGaugePa'];

/**
 * Whether a file that comes in counts for the finding at once. A capture without a pressure of the vapour system can never do
 * so; a table may, once its columns are mapped.
 */
export const countsForFinding = ({ capture, mapping, problem }: Preview): boolean =>
  problem === null &&
  (capture === undefined ||
    mapping?.columns.some(({ channel }) => channel !== null && PRESSURES.includes(channel)) === true);

/** Later than any stamp that counts from the start of something (judgement: 1990). */
const FIRST_DATE_S = 631_152_000;

const momentOf = (timeS: number | undefined): string | undefined =>
  timeS !== undefined && timeS > FIRST_DATE_S ? new Date(timeS * 1000).toISOString() : undefined;

export function captureFacts(capture: CaptureReading): CaptureFacts | undefined {
  const { status, codes, codesRead, freezeFrames, results, report } = capture;
  const isSilent =
    Object.keys(status).length === 0 && codesRead.length === 0 && freezeFrames.length === 0 && results.length === 0;
  if (isSilent) return undefined;
  const at = report.stamps === 'since-1970' ? momentOf(report.firstTimeS) : undefined;
  return { ...(at === undefined ? {} : { at }), status, codes, codesRead, freezeFrames, results };
}
