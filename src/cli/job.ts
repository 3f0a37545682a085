/** From files to a finding: reads car, notes and recordings, asks for the finding, keeps what it was made from. */
import { mappingSchema } from '../recording/mapping.ts';
import type { StoredSheet } from '../report/sheet.ts';
import { hasVapourPressure } from '../server/finding/make-sheet.ts';
import { progressInWords } from '../server/finding/progress-words.ts';
import type { ReadFile } from '../server/recordings/read-file.ts';
import { carSchema } from '../system/car.ts';
import { COMPLAINTS, type ComplaintWord } from './complaints.ts';
import { EXIT } from './exit-codes.ts';
import { Failure } from './failure.ts';
import { readJsonFile } from './json-file.ts';
import { notesFor, notesSchema, phasesFor } from './notes.ts';
import { startProgress } from './progress.ts';
import { readRecording } from './read-recording.ts';
import { runInThread } from './thread.ts';
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

function requirePressure(read: ReadFile): void {
  if (hasVapourPressure(read.recording)) return;
  const columns = read.mapping.columns.map(({ column }) => column).join(', ');
  throw new Failure(EXIT.input, `${read.path} has no pressure of the vapour system`, {
    file: read.path,
    found: `columns ${columns}`,
    expected:
      'a column with the pressure of tank, canister or pump module, or sensor volts and a car file with the sensor’s range',
    advice: `See how it was understood: vaporwright read ${read.path}. Then give the column in a file with --mapping.`,
  });
}

/** A recording that counts twice makes a finding surer than it is. */
function refuseTwice(reads: readonly ReadFile[]): void {
  reads.forEach((read, i) => {
    const same = reads.slice(0, i).find(({ sha256 }) => sha256 === read.sha256);
    if (same === undefined) return;
    throw new Failure(EXIT.usage, `the same recording was given twice`, {
      file: read.path,
      found: same.path === read.path ? read.path : `${same.path} and ${read.path} hold the same`,
      expected: 'recordings that were each made on their own',
      advice: 'Give each recording once; what counts twice would make the finding surer than it is.',
    });
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
      const read = await readRecording(file, {
        car: car.value,
        onProgress: (fraction) =>
          progress.report((READING_SHARE * (reads.length + fraction)) / files.length, `reading ${file}`),
        ...(mapping === undefined ? {} : { mapping }),
        ...(own === undefined ? {} : { notes: own }),
      });
      requirePressure(read);
      reads.push(read);
    }
    refuseTwice(reads);
    const inputs = {
      car: car.value,
      carSha256: car.sha256,
      recordings: reads.map(({ recording, quality, report, sha256 }) => ({ recording, quality, report, sha256 })),
      phases: reads.map(({ path }) => phasesFor(notes, path)),
      complaints: options.complaint === undefined ? [] : [COMPLAINTS[options.complaint]],
      codes: options.codes ?? [],
      program: PROGRAM,
      madeAt: options.madeAt ?? new Date().toISOString(),
    };
    return await runInThread('sheet', inputs, (fraction, what) =>
      progress.report(READING_SHARE + (1 - READING_SHARE) * fraction, progressInWords(what)),
    );
  } finally {
    progress.end();
  }
}
