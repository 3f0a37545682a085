/**
 * Accuracy of the finding on a folder of recordings in the practice format.
 *
 * `npm run bench:accuracy -- DIR --answers FILE`: diagnoses every case of DIR, writes one JSON line a case to FILE
 * and, where DIR tells the truth, prints a table and one JSON line of scores. Progress goes to stderr.
 */
import { statSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { EXIT } from '../../src/cli/exit-codes.ts';
import { asFailure, cannotRead, Failure, failureAsText } from '../../src/cli/failure.ts';
import { writeWhole } from '../../src/cli/write-whole.ts';
import { type Answer, answersText, readAnswers } from './answers.ts';
import { hasParity, listCases, type Parity, readCase, readRecording } from './practice.ts';
import { runCases } from './run-cases.ts';
import { score, scoresLine } from './score.ts';
import type { Size } from './score-sizes.ts';
import { scoresTable } from './score-table.ts';
import { spreadsheetDiameterMm } from './spreadsheet.ts';
import { quantile } from './statistics.ts';
import { readBounds, readTruth } from './truth.ts';
import type { CaseResult } from './worker.ts';

const USAGE = `usage: npm run bench:accuracy -- DIR [--answers FILE] [--only even|odd] [--workers N] [--reuse]
  DIR        folder with case-XXXX.csv.gz and case-XXXX.vehicle.json; truth.jsonl and bounds.json are used when there
  --answers  file for the answers, one JSON line a case
  --only     cases with even or odd numbers only, to score a development half and a kept-back half apart
  --workers  processes at work (default: one for each processor)
  --reuse    diagnose nothing; score the answers that FILE holds`;

interface Arguments {
  readonly folder: string;
  readonly answersFile: string | undefined;
  readonly only: Parity | undefined;
  readonly workers: number | undefined;
  readonly reuse: boolean;
}

const wrong = (found: string) => new Failure(EXIT.usage, found, { advice: `\n${USAGE}` });

function readArguments(): Arguments {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      answers: { type: 'string' },
      only: { type: 'string' },
      workers: { type: 'string' },
      reuse: { type: 'boolean', default: false },
    },
  });
  const [folder, ...rest] = positionals;
  if (folder === undefined || rest.length > 0) throw wrong('exactly one folder is expected');
  if (values.only !== undefined && values.only !== 'even' && values.only !== 'odd') {
    throw wrong(`--only is "${values.only}"; expected even or odd`);
  }
  const workers = values.workers === undefined ? undefined : Number(values.workers);
  if (workers !== undefined && !(Number.isInteger(workers) && workers > 0)) {
    throw wrong(`--workers is "${values.workers}"; expected a whole number from 1`);
  }
  if (values.reuse && values.answers === undefined) throw wrong('--reuse needs --answers with the file to score');
  return {
    folder: resolve(folder),
    answersFile: values.answers === undefined ? undefined : resolve(values.answers),
    only: values.only,
    workers,
    reuse: values.reuse,
  };
}

function casesOf({ folder, only }: Arguments): string[] {
  try {
    if (!statSync(folder).isDirectory()) throw new Error('it is not a folder');
  } catch (error) {
    throw cannotRead(folder, error);
  }
  const names = listCases(folder).filter((name) => hasParity(name, only));
  if (names.length === 0) {
    throw new Failure(EXIT.input, 'there is no case in the folder', {
      file: folder,
      expected: 'case-XXXX.csv.gz with case-XXXX.vehicle.json',
    });
  }
  return names;
}

async function diagnoseAll(args: Arguments, names: readonly string[]): Promise<CaseResult[]> {
  const say = (text: string) => process.stderr.write(text);
  const live = process.stderr.isTTY === true;
  const every = Math.max(1, Math.ceil(names.length / 20));
  const results = await runCases({
    folder: args.folder,
    names,
    ...(args.workers !== undefined && { workers: args.workers }),
    onResult: ({ answer, failure }, done) => {
      if (failure !== undefined) say(`${live ? '\r' : ''}${answer.case}: no diagnosis: ${failure}\n`);
      if (live) say(`\r${done} of ${names.length} cases`);
      else if (done % every === 0 || done === names.length) say(`${done} of ${names.length} cases\n`);
    },
  });
  if (live) say('\n');
  const failed = results.filter((r) => r.failure !== undefined).length;
  if (failed > 0) say(`${failed} of ${names.length} cases could not be diagnosed; their answers are uniform\n`);
  return results;
}

/** Sizes by the spreadsheet method; a case that cannot be read has none. */
function spreadsheetSizes(folder: string, names: readonly string[]): Map<string, Size> {
  const sizes = new Map<string, Size>();
  for (const name of names) {
    try {
      const c = readCase(folder, name);
      const median = c.letter === 'A' ? spreadsheetDiameterMm(c.car, readRecording(c)) : undefined;
      if (median !== undefined) sizes.set(name, { median });
    } catch {
      // The diagnosis has told of this case already.
    }
  }
  return sizes;
}

async function main(): Promise<void> {
  const args = readArguments();
  const { folder, answersFile, only } = args;
  const names = casesOf(args);
  const truths = readTruth(folder)?.filter((t) => hasParity(t.case, only));
  const results = args.reuse ? [] : await diagnoseAll(args, names);
  const answers: readonly Answer[] =
    args.reuse && answersFile !== undefined ? readAnswers(answersFile) : results.map((r) => r.answer);
  if (!args.reuse && answersFile !== undefined) writeWhole([{ path: answersFile, content: answersText(answers) }]);

  const seconds = results.map((r) => r.seconds);
  const effort = {
    diagnosed: results.filter((r) => r.failure === undefined).length,
    failed: results.filter((r) => r.failure !== undefined).length,
    seconds_per_case: { median: quantile(seconds, 0.5), max: quantile(seconds, 1) },
  };
  const spent = `seconds a case: median ${effort.seconds_per_case.median?.toFixed(2)}, longest ${effort.seconds_per_case.max?.toFixed(2)}; ${effort.failed} failed`;
  if (truths === undefined) {
    process.stdout.write(`${answers.length} answers; ${spent}; the folder tells no truth, so nothing is scored\n`);
    process.stdout.write(
      `${scoresLine({ set: basename(folder), only: only ?? 'all', cases: names.length, ...effort })}\n`,
    );
    return;
  }
  const scores = score({
    set: basename(folder),
    only,
    truths,
    bounds: readBounds(folder),
    answers,
    spreadsheet: spreadsheetSizes(folder, names),
  });
  process.stdout.write(`${scoresTable(scores)}\n${args.reuse ? '' : `${spent}\n`}`);
  process.stdout.write(`${scoresLine(args.reuse ? scores : { ...scores, ...effort })}\n`);
}

try {
  await main();
} catch (error) {
  const usage = error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
  const failure = usage ? wrong(error.message) : asFailure(error);
  process.stderr.write(`${failureAsText(failure)}\n`);
  process.exitCode = failure.exitCode;
}
