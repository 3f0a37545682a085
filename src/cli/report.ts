/** `report`: the finding as one HTML file and a PDF, from a saved finding or straight from recordings. */
import { join } from 'node:path';
import { findingFromStored } from '../report/finding-format.ts';
import { PAGE_FONT_FILES, PDF_FONT_FILES } from '../report/fonts.ts';
import { reportHtml } from '../report/html.ts';
import { type Limit, limitsSchema, REFERENCE_LIMITS } from '../report/limits.ts';
import { reportPdf } from '../report/pdf.ts';
import { technicalSentence } from '../report/sentences.ts';
import { type Sheet, type StoredSheet, storedSheetSchema } from '../report/sheet.ts';
import { loadFonts } from '../server/hand-over/load-fonts.ts';
import { EXIT } from './exit-codes.ts';
import { Failure } from './failure.ts';
import { type JobOptions, makeSheet } from './job.ts';
import { readJsonFile } from './json-file.ts';
import { printJson, printText } from './output.ts';
import { writeWhole } from './write-whole.ts';

export interface ReportOptions extends Partial<JobOptions> {
  readonly finding?: string;
  readonly limits?: string;
  readonly out: string;
  readonly json?: boolean;
}

const limitsFrom = (file: string | undefined): readonly Limit[] =>
  file === undefined ? REFERENCE_LIMITS : readJsonFile(file, limitsSchema, 'vaporwright-limits-1').value.limits;

/** The two files of a report, written together. */
export async function writeReport(
  stored: StoredSheet,
  limits: readonly Limit[],
  folder: string,
): Promise<readonly string[]> {
  const sheet: Sheet = { ...stored, finding: findingFromStored(stored.finding), limits };
  const html = join(folder, 'report.html');
  const pdf = join(folder, 'report.pdf');
  writeWhole([
    { path: html, content: reportHtml(sheet, loadFonts(PAGE_FONT_FILES)) },
    { path: pdf, content: await reportPdf(sheet, loadFonts(PDF_FONT_FILES)) },
  ]);
  return [html, pdf];
}

async function sheetFor(recordings: readonly string[], options: ReportOptions): Promise<StoredSheet> {
  const { finding, car } = options;
  if (finding !== undefined && recordings.length > 0) {
    throw new Failure(EXIT.usage, 'both a saved finding and recordings were given', {
      advice: 'Give either --finding FILE, or --car FILE and recordings.',
    });
  }
  if (finding !== undefined) return readJsonFile(finding, storedSheetSchema, 'vaporwright-finding-1').value;
  if (car === undefined || recordings.length === 0) {
    throw new Failure(EXIT.usage, 'nothing to report on', {
      expected: 'either --finding FILE, or --car FILE and recordings',
      advice: 'Try: vaporwright report --car car.json hold.csv',
    });
  }
  return makeSheet(recordings, { ...options, car });
}

export async function reportCommand(recordings: readonly string[], options: ReportOptions): Promise<void> {
  const limits = limitsFrom(options.limits);
  const stored = await sheetFor(recordings, options);
  const files = await writeReport(stored, limits, options.out);
  const sentence = technicalSentence(findingFromStored(stored.finding));
  if (options.json === true) {
    printJson({ schema: 'vaporwright-report-1', verdict: stored.finding.verdict, sentence, files });
    return;
  }
  printText([sentence, '', 'Written:', ...files.map((file) => `  ${file}`)].join('\n'));
}
