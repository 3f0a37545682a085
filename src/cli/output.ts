/** Results go to stdout and nothing else does. */
import { writeSync } from 'node:fs';
import { cannotWrite } from './failure.ts';

const STDOUT = 1;

/** Writes all of it before returning, so that nothing is lost when the program ends next. */
function writeAll(text: string): void {
  let rest = Buffer.from(text);
  while (rest.length > 0) {
    try {
      rest = rest.subarray(writeSync(STDOUT, rest));
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : '';
      // A reader that has seen enough (head) closes the pipe: that is not a failure.
      if (code === 'EPIPE') process.exit(0);
      if (code !== 'EAGAIN') throw cannotWrite('the output', error);
    }
  }
}

/** As it stands: help and the version. */
export const printAsIs = (text: string): void => writeAll(text);
/** One object on one line. */
export const printJson = (value: unknown): void => writeAll(`${JSON.stringify(value)}\n`);
export const printText = (text: string): void => writeAll(text.endsWith('\n') ? text : `${text}\n`);
/** Remarks that are not the result. */
export const remark = (text: string): void => {
  process.stderr.write(`${text}\n`);
};
