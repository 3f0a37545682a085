/** Reads one recording for a command; what is wrong with it ends the command with words. */
import { statSync } from 'node:fs';
import {
  CaptureWithoutRecording,
  type ReadFile,
  type ReadFileOptions,
  readRecordingFile,
  UnreadableFile,
} from '../server/recordings/read-file.ts';
import { EXIT } from './exit-codes.ts';
import { cannotRead, Failure } from './failure.ts';
import { readingWhatMayWait } from './stop-signals.ts';

const isPipe = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isFile() === false;

export async function readRecording(path: string, options: ReadFileOptions): Promise<ReadFile> {
  try {
    const read = () => readRecordingFile(path, options);
    return await (isPipe(path) ? readingWhatMayWait(read) : read());
  } catch (error) {
    if (error instanceof CaptureWithoutRecording) throw error;
    if (error instanceof UnreadableFile) throw new Failure(EXIT.input, error.message, error.facts);
    const isFromSystem = error instanceof Error && 'code' in error;
    throw isFromSystem ? cannotRead(path, error) : error;
  }
}
