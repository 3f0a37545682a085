/** `demo`: the whole job on the invented example that ships, and how to do it on one's own files. */
import { REFERENCE_LIMITS } from '../report/limits.ts';
import { findingInWords } from './finding-words.ts';
import { makeSheet } from './job.ts';
import { machineFinding } from './machine-finding.ts';
import { printJson, printText } from './output.ts';
import { packagePath } from './package-path.ts';
import { writeReport } from './report.ts';

export interface DemoOptions {
  readonly out: string;
  readonly json?: boolean;
}

const CAR = 'examples/invented-estate.car.json';
const RECORDING = 'examples/leak-self-test.csv';

export async function demoCommand(options: DemoOptions): Promise<void> {
  const sheet = await makeSheet([packagePath(RECORDING)], { car: packagePath(CAR), codes: ['P0442'] });
  const files = await writeReport(sheet, REFERENCE_LIMITS, options.out);
  if (options.json === true) {
    printJson({ ...machineFinding(sheet), files });
    return;
  }
  printText(
    [
      findingInWords(sheet),
      '',
      'Report written (open the first in a browser):',
      ...files.map((file) => `  ${file}`),
      '',
      'On your own files:',
      '  npm start -- diagnose --car car.json recording.csv',
      '  npm start -- report --car car.json recording.csv --out folder',
      '  npm start -- read recording.csv        shows how a recording is understood',
      '  npm start -- --help                    shows everything else',
      `Copy ${CAR} to describe your car; what you do not know is left out.`,
    ].join('\n'),
  );
}
