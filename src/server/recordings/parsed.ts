/**
 * A recording once read, on the disk: its samples as the pages take them and what there is to say of them.
 *
 * Named by everything that the reading depends on, so that nothing here is ever out of date; it can be thrown away.
 */
import { createHash, randomUUID } from 'node:crypto';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { CaptureReading } from '../../recording/bus/read-capture.ts';
import type { Mapping } from '../../recording/mapping.ts';
import { findPhases } from '../../recording/phases.ts';
import { findProcedure } from '../../recording/procedure.ts';
import { SKIP_REASONS } from '../../recording/read-report.ts';
import type { RecordingNotes } from '../../recording/recording.ts';
import { qualityInWords } from '../../report/quality-words.ts';
import type { Car } from '../../system/car.ts';
import { MAX_UNPACKED_BYTES } from '../contract/paths.ts';
import type { Preview, ReadSummary } from '../contract/recordings.ts';
import { encodeSamples } from '../contract/samples.ts';
import type { ByteCache } from './byte-cache.ts';
import { captureFacts } from './capture-facts.ts';
import { readHead } from './head.ts';
import {
  CaptureWithoutRecording,
  type ReadFile,
  type ReadFileOptions,
  readRecordingFile,
  UnreadableFile,
} from './read-file.ts';

export interface ReadingInputs {
  readonly path: string;
  readonly sha256: string;
  readonly fileName: string;
  readonly mapping?: Mapping;
  readonly notes?: RecordingNotes;
  /** Only what reading needs of the car. */
  readonly pressureSensor?: NonNullable<Car['pressureSensor']>;
  /** Name and version of the program: another one may read differently. */
  readonly program: string;
}

const carOf = ({ pressureSensor }: ReadingInputs) => (pressureSensor === undefined ? undefined : { pressureSensor });

/** Reads the whole recording as its inputs say. */
export function readReading(
  inputs: ReadingInputs,
  options: Pick<ReadFileOptions, 'onProgress' | 'maxUnpackedBytes'>,
): Promise<ReadFile> {
  const { path, fileName, mapping, notes } = inputs;
  const car = carOf(inputs);
  return readRecordingFile(path, {
    fileName,
    ...options,
    ...(mapping === undefined ? {} : { mapping }),
    ...(notes === undefined ? {} : { notes }),
    ...(car === undefined ? {} : { car }),
  });
}

export const readingKey = ({ path: _, ...inputs }: ReadingInputs): string =>
  createHash('sha256').update(JSON.stringify(inputs)).digest('hex');

export const samplesPath = (folder: string, key: string): string => join(folder, key.slice(0, 2), `${key}.samples`);
export const previewPath = (folder: string, key: string): string => join(folder, key.slice(0, 2), `${key}.json`);

async function writeAside(path: string, content: Uint8Array | string): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const aside = `${path}.${randomUUID().slice(0, 8)}.part`;
  try {
    await writeFile(aside, content, { mode: 0o600 });
    await rename(aside, path);
  } finally {
    await rm(aside, { force: true });
  }
}

const problemOf = ({ message, facts }: UnreadableFile): Preview['problem'] => ({
  code: 'unreadable',
  message,
  ...facts,
});

function factsOf(capture: CaptureReading | undefined): Pick<Preview, 'capture'> {
  const facts = capture === undefined ? undefined : captureFacts(capture);
  return facts === undefined ? {} : { capture: facts };
}

/** Reads, writes both files, and gives what there is to say. A file that cannot be read leaves no samples. */
export async function readAndKeep(
  folder: string,
  inputs: ReadingInputs,
  onProgress: (fraction: number) => void = () => {},
): Promise<Preview> {
  const key = readingKey(inputs);
  const { path, fileName, mapping } = inputs;
  const head = await readHead(path, fileName, mapping, carOf(inputs));
  const base = { ...head, isGiven: mapping !== undefined };
  let preview: Preview;
  try {
    const read = await readReading(inputs, {
      maxUnpackedBytes: MAX_UNPACKED_BYTES,
      onProgress: (fraction) => onProgress(0.8 * fraction),
    });
    const procedure = findProcedure(read.recording);
    const phases = findPhases(read.recording, [], procedure);
    const quality = qualityInWords(read.quality);
    const report: ReadSummary = {
      samples: read.report.samples,
      linesRead: read.report.linesRead,
      durationS: read.quality.time.durationS,
      procedure: procedure.kind,
      quality,
      warnings: read.report.warnings,
      skipped: read.report.skipped.map(({ reason, count, firstLines }) => ({
        reason: SKIP_REASONS[reason],
        count,
        firstLines,
      })),
    };
    const facts = {
      label: fileName,
      procedure: procedure.kind,
      phases,
      foundPhases: phases,
      quality,
      warnings: read.report.warnings,
    };
    await writeAside(samplesPath(folder, key), encodeSamples(read.recording, facts));
    preview = { ...base, mapping: read.mapping, report, problem: null, ...factsOf(read.capture) };
  } catch (error) {
    if (!(error instanceof UnreadableFile)) throw error;
    preview = { ...base, mapping: mapping ?? error.guessed ?? null, report: null, problem: problemOf(error) };
    if (error instanceof CaptureWithoutRecording) preview = { ...preview, ...factsOf(error.capture) };
  }
  await writeAside(previewPath(folder, key), JSON.stringify(preview));
  onProgress(1);
  return preview;
}

/** What was kept before, if it was. */
export async function keptPreview(folder: string, key: string, cache: ByteCache): Promise<Preview | undefined> {
  try {
    const path = previewPath(folder, key);
    const bytes = (await cache.read(path)) ?? (await readFile(path));
    return JSON.parse(new TextDecoder().decode(bytes)) as Preview;
  } catch {
    return undefined;
  }
}
