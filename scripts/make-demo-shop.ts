/**
 * Makes the files of the demo shop: recordings by the simulator as a workshop's logger would keep them, findings from
 * them by this very program, and the hand-over document of the finished job. Cars, faults and recordings are invented.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { foundJob, toldJob } from '../src/jobs/demo/build-job.ts';
import { findingsFile, handOverFile, recordingFile } from '../src/jobs/demo/demo-files.ts';
import type { DemoJob } from '../src/jobs/demo/demo-job.ts';
import { DEMO_FOLDER, DEMO_JOBS } from '../src/jobs/demo/demo-shop.ts';
import { demoRecordingCsv } from '../src/jobs/demo/recording-csv.ts';
import { DEMO_RECORDING_NAMES } from '../src/jobs/demo/scenarios.ts';
import { findingFromStored } from '../src/report/finding-format.ts';
import { technicalSentence } from '../src/report/sentences.ts';
import { findingOf, handOverDocumentOf } from './demo-findings.ts';

const folder = fileURLToPath(new URL(`../${DEMO_FOLDER}`, import.meta.url));
mkdirSync(folder, { recursive: true });

function write(name: string, bytes: Uint8Array): void {
  writeFileSync(join(folder, name), bytes);
  console.log(`${DEMO_FOLDER}/${name}  ${bytes.length} bytes`);
}

/**
 * With `--findings` the recordings stay as they are: for a program whose findings have changed. With `--hand-over` the
 * findings stay too: for one that words or sets the document differently.
 */
const onlyHandOver = process.argv.includes('--hand-over');
if (!process.argv.includes('--findings') && !onlyHandOver) {
  for (const name of DEMO_RECORDING_NAMES) {
    write(recordingFile(name), gzipSync(demoRecordingCsv(name), { level: 9 }));
  }
}
async function writeFindings(told: DemoJob, number: number): Promise<void> {
  const { job } = await toldJob(folder, told, number);
  const sheets = [];
  for (const made of told.findings) {
    const sheet = await findingOf(folder, told, job, made);
    console.log(`  ${told.key}: ${technicalSentence(findingFromStored(sheet.finding))}`);
    sheets.push(sheet);
  }
  write(findingsFile(told.key), gzipSync(JSON.stringify(sheets), { level: 9 }));
}

for (const [i, told] of DEMO_JOBS.entries()) {
  if (told.findings.length === 0) continue;
  if (!onlyHandOver) await writeFindings(told, i + 1);
  if (told.handOver !== undefined) {
    const found = await foundJob(folder, told, i + 1);
    write(handOverFile(told.key), await handOverDocumentOf(found.job, told.handOver));
  }
}
