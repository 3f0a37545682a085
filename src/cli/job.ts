/** From files to a finding: reads car, notes and recordings, asks for the finding, keeps what it was made from. */
import { type DiagnosisInput, diagnose } from '../diagnosis/diagnose.ts';
import { mappingSchema } from '../recording/mapping.ts';
import { findPhases } from '../recording/phases.ts';
import type { Recording } from '../recording/recording.ts';
import { qualityInWords } from '../report/quality-words.ts';
import type { SheetRecording, StoredSheet } from '../report/sheet.ts';
import { carSchema } from '../system/car.ts';
import { changesOfCommands } from './command-changes.ts';
import { COMPLAINTS, type ComplaintWord } from './complaints.ts';
import { EXIT } from './exit-codes.ts';
import { Failure } from './failure.ts';
import { readJsonFile } from './json-file.ts';
import { notesFor, notesSchema, phasesFor } from './notes.ts';
import { startProgress } from './progress.ts';
import { progressInWords } from './progress-words.ts';
import { type ReadFile, readRecordingFile } from './read-recording.ts';
import { storedFinding } from './stored-finding.ts';
import { PROGRAM } from './version.ts';

export interface JobOptions {
  readonly car: string;
  readonly codes?: readonly string[];
  readonly complaint?: ComplaintWord;
  readonly notes?: string;
  readonly mapping?: string;
  /** Instead of the clock: the time written into the finding, ISO 8601 UTC. */
  readonly madeAt?: string;
}

/** Share of the work that reading takes, for the progress line (judgement). */
const READING_SHARE = 0.15;

const firstFinite = (values: Float64Array | undefined): number | undefined => values?.find(Number.isFinite);

function conditions({ channels }: Recording): SheetRecording['conditions'] {
  const fuelLevel = firstFinite(channels.fuelLevel);
  const ambientTemperatureK = firstFinite(channels.ambientTemperatureK);
  const fuelTemperatureK = firstFinite(channels.fuelTemperatureK);
  const barometricPa = firstFinite(channels.barometricPa);
  return {
    ...(fuelLevel === undefined ? {} : { fuelLevel }),
    ...(ambientTemperatureK === undefined ? {} : { ambientTemperatureK }),
    ...(fuelTemperatureK === undefined ? {} : { fuelTemperatureK }),
    ...(barometricPa === undefined ? {} : { barometricPa }),
  };
}

function requirePressure(read: ReadFile): void {
  const { tankPressureGaugePa, pumpPressureGaugePa, canisterPressureGaugePa } = read.recording.channels;
  if ([tankPressureGaugePa, pumpPressureGaugePa, canisterPressureGaugePa].some((each) => each !== undefined)) return;
  const columns = read.mapping.columns.map(({ column }) => column).join(', ');
  throw new Failure(EXIT.input, `${read.path} has no pressure of the vapour system`, {
    file: read.path,
    found: `columns ${columns}`,
    expected:
      'a column with the pressure of tank, canister or pump module, or sensor volts and a car file with the sensor’s range',
    advice: `See how it was understood: vaporwright read ${read.path}. Then give the column in a file with --mapping.`,
  });
}

export async function makeSheet(files: readonly string[], options: JobOptions): Promise<StoredSheet> {
  const car = readJsonFile(options.car, carSchema, 'vaporwright-car-1');
  const notes =
    options.notes === undefined ? undefined : readJsonFile(options.notes, notesSchema, 'vaporwright-notes-1').value;
  const mapping =
    options.mapping === undefined
      ? undefined
      : readJsonFile(options.mapping, mappingSchema, 'vaporwright-mapping-1').value;
  const progress = startProgress(false);
  try {
    const reads: ReadFile[] = [];
    for (const file of files) {
      const own = notesFor(notes, file);
      const read = await readRecordingFile(file, {
        car: car.value,
        onProgress: (fraction) =>
          progress.report((READING_SHARE * (reads.length + fraction)) / files.length, `reading ${file}`),
        ...(mapping === undefined ? {} : { mapping }),
        ...(own === undefined ? {} : { notes: own }),
      });
      requirePressure(read);
      reads.push(read);
    }
    const phases = reads.map(({ recording, path }) => findPhases(recording, phasesFor(notes, path)));
    const input: DiagnosisInput = {
      car: car.value,
      recordings: reads.map((read) => read.recording),
      phases,
      ...(options.complaint === undefined ? {} : { complaints: [COMPLAINTS[options.complaint]] }),
      ...(options.codes === undefined ? {} : { codes: options.codes }),
    };
    const finding = diagnose(input, {
      onProgress: (fraction, what) =>
        progress.report(READING_SHARE + (1 - READING_SHARE) * fraction, progressInWords(what)),
    });
    return {
      schema: 'vaporwright-finding-1',
      program: PROGRAM,
      madeAt: options.madeAt ?? new Date().toISOString(),
      car: car.value,
      carSha256: car.sha256,
      ...(options.complaint === undefined ? {} : { complaint: COMPLAINTS[options.complaint] }),
      codes: [...(options.codes ?? [])],
      recordings: reads.map(
        ({ recording, quality, report, sha256 }, i): SheetRecording => ({
          label: recording.label,
          sha256,
          samples: report.samples,
          durationS: quality.time.durationS,
          procedure: finding.procedures[i] ?? 'unknown',
          phases: phases[i] ?? [],
          quality: qualityInWords(quality),
          warnings: report.warnings,
          conditions: conditions(recording),
          commands: changesOfCommands(recording),
        }),
      ),
      finding: storedFinding(finding),
    };
  } finally {
    progress.end();
  }
}
