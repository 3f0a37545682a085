/** From recordings that are read to a finding with all that it was made from. */
import { type DiagnosisInput, diagnose, type HandCheck } from '../../diagnosis/diagnose.ts';
import type { Complaint } from '../../diagnosis/priors/root-causes.ts';
import { findPhases } from '../../recording/phases.ts';
import type { Phase, Recording } from '../../recording/recording.ts';
import { changesOfCommands } from '../../report/command-changes.ts';
import { qualityInWords } from '../../report/quality-words.ts';
import { recordedConditions } from '../../report/recorded-conditions.ts';
import type { SheetRecording, StoredSheet } from '../../report/sheet.ts';
import { storedFinding } from '../../report/stored-finding.ts';
import type { Car } from '../../system/car.ts';
import type { ReadFile } from '../recordings/read-file.ts';

export interface SheetInputs {
  readonly car: Car;
  readonly carSha256: string;
  readonly recordings: readonly Pick<ReadFile, 'recording' | 'quality' | 'report' | 'sha256'>[];
  /** Phases corrected by hand, by recording. */
  readonly phases: readonly (readonly Phase[])[];
  readonly complaints: readonly Complaint[];
  readonly codes: readonly string[];
  readonly handChecks?: readonly HandCheck[];
  /** Name and version of the program. */
  readonly program: string;
  /** ISO 8601 UTC */
  readonly madeAt: string;
  readonly onProgress?: (fraction: number, what: string) => void;
}

/** Without one of these a recording says nothing of the vapour system. */
export const hasVapourPressure = ({ channels }: Recording): boolean =>
  [channels.tankPressureGaugePa, channels.pumpPressureGaugePa, channels.canisterPressureGaugePa].some(
    (each) => each !== undefined,
  );

export function makeSheetFrom(inputs: SheetInputs): StoredSheet {
  const { car, carSha256, recordings, complaints, codes, handChecks = [], program, madeAt, onProgress } = inputs;
  const phases = recordings.map(({ recording }, i) => findPhases(recording, inputs.phases[i] ?? []));
  const input: DiagnosisInput = {
    car,
    recordings: recordings.map((read) => read.recording),
    phases,
    ...(complaints.length === 0 ? {} : { complaints }),
    ...(codes.length === 0 ? {} : { codes }),
    ...(handChecks.length === 0 ? {} : { handChecks }),
  };
  const finding = diagnose(input, onProgress === undefined ? {} : { onProgress });
  return {
    schema: 'vaporwright-finding-1',
    program,
    madeAt,
    car,
    carSha256,
    ...(complaints.length === 0 ? {} : { complaint: complaints.join(', ') }),
    codes: [...codes],
    recordings: recordings.map(
      ({ recording, quality, report, sha256 }, i): SheetRecording => ({
        label: recording.label,
        sha256,
        samples: report.samples,
        durationS: quality.time.durationS,
        procedure: finding.procedures[i] ?? 'unknown',
        phases: phases[i] ?? [],
        quality: qualityInWords(quality),
        warnings: report.warnings,
        conditions: recordedConditions(recording),
        commands: changesOfCommands(recording),
      }),
    ),
    finding: storedFinding(finding),
  };
}
