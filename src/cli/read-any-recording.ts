/** A recording or a bus capture from a file; a capture may hold codes and status only. */
import type { CaptureReading } from '../recording/bus/read-capture.ts';
import type { Recording } from '../recording/recording.ts';
import type { SensorOwner } from '../recording/sensor-volts.ts';
import { CaptureWithoutRecording, readRecordingFile } from '../server/recordings/read-file.ts';
import { readRecording } from './read-recording.ts';

export async function readAnyRecording(
  path: string,
  car: SensorOwner | undefined,
): Promise<{ readonly recording?: Recording; readonly capture?: CaptureReading }> {
  const options = car === undefined ? {} : { car };
  try {
    return await readRecordingFile(path, options);
  } catch (error) {
    if (error instanceof CaptureWithoutRecording) return { capture: error.capture };
    // Once more for the words of what is wrong.
    return await readRecording(path, options);
  }
}
