/** `read`: any recording into our own columns, with the mapping that was used and the quality found. */
import { mappingSchema } from '../recording/mapping.ts';
import { writeRecordingCsv } from '../recording/write-csv.ts';
import { qualityInWords } from '../report/quality-words.ts';
import { CaptureWithoutRecording } from '../server/recordings/read-file.ts';
import { carSchema } from '../system/car.ts';
import { captureInWords, withoutSamples } from './capture-words.ts';
import { readJsonFile } from './json-file.ts';
import { mappingInWords } from './mapping-words.ts';
import { notesFor, notesSchema } from './notes.ts';
import { printJson, printText, remark } from './output.ts';
import { startProgress } from './progress.ts';
import { readRecording } from './read-recording.ts';
import { refuseOverwritingInput, writeWhole } from './write-whole.ts';

export interface ReadOptions {
  readonly out?: string;
  readonly mapping?: string;
  readonly car?: string;
  readonly notes?: string;
  readonly printMapping?: boolean;
  readonly json?: boolean;
}

export async function readCommand(file: string, options: ReadOptions): Promise<void> {
  const { out } = options;
  if (out !== undefined) refuseOverwritingInput([out], [file]);
  const mapping =
    options.mapping === undefined
      ? undefined
      : readJsonFile(options.mapping, mappingSchema, 'vaporwright-mapping-1').value;
  const car = options.car === undefined ? undefined : readJsonFile(options.car, carSchema, 'vaporwright-car-1').value;
  const notes =
    options.notes === undefined ? undefined : readJsonFile(options.notes, notesSchema, 'vaporwright-notes-1').value;
  const own = notesFor(notes, file);
  const progress = startProgress(false);
  const read = await readRecording(file, {
    onProgress: (fraction) => progress.report(fraction, `reading ${file}`),
    ...(mapping === undefined ? {} : { mapping }),
    ...(car === undefined ? {} : { car }),
    ...(own === undefined ? {} : { notes: own }),
  })
    .catch((error: unknown) => {
      if (error instanceof CaptureWithoutRecording && out === undefined) return error.capture;
      throw error;
    })
    .finally(progress.end);
  if (!('recording' in read) || !('mapping' in read)) {
    // Codes and readiness alone are worth reading.
    if (options.json === true) printJson({ schema: 'vaporwright-read-1', file, written: null, capture: read });
    else printText(captureInWords(read).join('\n'));
    return;
  }
  if (out !== undefined) writeWhole([{ path: out, content: writeRecordingCsv(read.recording) }]);

  if (options.printMapping === true) {
    printText(JSON.stringify(read.mapping, null, 2));
    return;
  }
  if (options.json === true) {
    printJson({
      schema: 'vaporwright-read-1',
      file,
      sha256: read.sha256,
      written: out ?? null,
      channels: Object.keys(read.recording.channels),
      mapping: read.mapping,
      report: read.report,
      quality: read.quality,
      ...(read.capture === undefined ? {} : { capture: withoutSamples(read.capture) }),
    });
    return;
  }
  const lines = [
    ...(read.capture === undefined
      ? []
      : [...captureInWords({ ...read.capture, report: { ...read.capture.report, warnings: [] } }), '']),
    `${file}: ${read.report.samples} samples from ${read.report.linesRead} lines`,
    '',
    'Columns',
  ];
  lines.push(...mappingInWords(read.mapping).map((text) => `  ${text}`));
  lines.push('', 'Quality', ...qualityInWords(read.quality).map((text) => `  ${text}`));
  if (read.report.warnings.length > 0) lines.push('', 'Warnings', ...read.report.warnings.map((text) => `  ${text}`));
  printText(lines.join('\n'));
  if (out === undefined) remark('Nothing was written; --out FILE writes the recording with our own columns.');
  else remark(`Written: ${out}`);
}
