/** `diagnose`: which fault the recordings show, how large, how sure and why. */
import { findingInWords } from './finding-words.ts';
import { type JobOptions, makeSheet } from './job.ts';
import { machineFinding } from './machine-finding.ts';
import { printJson, printText, remark } from './output.ts';
import { refuseOverwritingInput, writeWhole } from './write-whole.ts';

export interface DiagnoseOptions extends JobOptions {
  readonly out?: string;
  readonly json?: boolean;
}

export async function diagnoseCommand(recordings: readonly string[], options: DiagnoseOptions): Promise<void> {
  const { out } = options;
  if (out !== undefined) refuseOverwritingInput([out], [...recordings, options.car]);
  const sheet = await makeSheet(recordings, options);
  if (out !== undefined) writeWhole([{ path: out, content: `${JSON.stringify(sheet)}\n` }]);
  if (options.json === true) printJson(machineFinding(sheet));
  else printText(findingInWords(sheet));
  if (out !== undefined) remark(`Written: ${out}`);
}
