/** What the server says of recordings, made from a real file by the rooms that the server uses. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page, Route } from 'playwright-core';
import type { Job } from '../../src/jobs/record/job.ts';
import { findFormat } from '../../src/recording/csv-format.ts';
import { findPhases } from '../../src/recording/phases.ts';
import { findProcedure } from '../../src/recording/procedure.ts';
import { CsvError, readRecordingCsv } from '../../src/recording/read-csv.ts';
import { qualityInWords } from '../../src/report/quality-words.ts';
import type { Preview, Unreadable } from '../../src/server/contract/recordings.ts';
import { encodeSamples } from '../../src/server/contract/samples.ts';

export const EXAMPLE = readFileSync(
  fileURLToPath(new URL('../../examples/leak-self-test.csv', import.meta.url)),
  'utf8',
);

type Entry = Job['recordings'][number];

export function samplesOf(text: string, entry: Pick<Entry, 'mapping' | 'phases' | 'label'>): Uint8Array {
  const { recording, quality, report } = readRecordingCsv(text, {
    fileName: entry.label,
    ...(entry.mapping === undefined ? {} : { mapping: entry.mapping }),
  });
  const procedure = findProcedure(recording);
  return encodeSamples(recording, {
    label: entry.label,
    procedure: procedure.kind,
    phases: findPhases(recording, entry.phases, procedure),
    foundPhases: findPhases(recording, [], procedure),
    quality: [...qualityInWords(quality)],
    warnings: [...report.warnings],
  });
}

const FIRST = 12;

const headOf = (text: string): Pick<Preview, 'header' | 'rows'> => {
  const format = findFormat(text.slice(0, 20_000), 'x', undefined);
  return { header: [...format.header], rows: format.sample.slice(0, FIRST).map((row) => [...row]) };
};

export function previewOf(text: string, entry: Pick<Entry, 'mapping' | 'fileName'>): Preview {
  const guess = readRecordingCsv(text, { fileName: entry.fileName });
  const used =
    entry.mapping === undefined ? guess : readRecordingCsv(text, { fileName: entry.fileName, mapping: entry.mapping });
  return {
    ...headOf(text),
    mapping: used.mapping,
    guessed: guess.mapping,
    isGiven: entry.mapping !== undefined,
    report: {
      samples: used.report.samples,
      linesRead: used.report.linesRead,
      durationS: used.quality.time.durationS,
      procedure: findProcedure(used.recording).kind,
      quality: [...qualityInWords(used.quality)],
      warnings: [...used.report.warnings],
      skipped: used.report.skipped.map(({ reason, count, firstLines }) => ({ reason, count, firstLines })),
    },
    problem: null,
  };
}

/** The refusal of a file that cannot be read; undefined when it can. */
export function refusalOf(text: string, fileName: string): Unreadable | undefined {
  try {
    readRecordingCsv(text, { fileName });
    return undefined;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const { line, column, found, expected, whatToDo, mapping } = error.facts;
    return {
      error: {
        code: 'unreadable',
        message: error.message,
        file: fileName,
        ...(line === undefined ? {} : { line }),
        ...(column === undefined ? {} : { column }),
        found,
        expected,
        advice: whatToDo,
      },
      head: headOf(text),
      ...(mapping === undefined ? {} : { guessed: mapping }),
    };
  }
}

/** Answers for samples and preview of every recording of a job, as it stands at the moment of asking. */
export async function answerRecordings(page: Page, jobOf: () => Job, text: string): Promise<void> {
  const entryOf = (route: Route): Entry => {
    const id = /recordings\/([^/]+)\//.exec(route.request().url())?.[1];
    const entry = jobOf().recordings.find((each) => each.id === id);
    if (entry === undefined) throw new Error(`no recording ${id}`);
    return entry;
  };
  await page.route('**/recordings/*/samples', (route) =>
    route.fulfill({ body: Buffer.from(samplesOf(text, entryOf(route))), contentType: 'application/octet-stream' }),
  );
  await page.route('**/recordings/*/preview', (route) => route.fulfill({ json: previewOf(text, entryOf(route)) }));
}

/** Refuses the next upload with a status and a body. */
export async function refuseUpload(page: Page, status: number, body: unknown): Promise<void> {
  await page.route('**/jobs/*/recordings', (route) => route.fulfill({ status, json: body }), { times: 1 });
}
