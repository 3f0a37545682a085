/** A failure in words for the reader: what was found, where, what was expected, what to do. */
import { EXIT, type ExitCode } from './exit-codes.ts';

export interface FailureDetail {
  readonly file?: string;
  /** Counted from 1. */
  readonly line?: number;
  readonly column?: number;
  readonly found?: string;
  readonly expected?: string;
  readonly advice?: string;
}

export class Failure extends Error {
  readonly exitCode: ExitCode;
  readonly detail: FailureDetail;

  constructor(exitCode: ExitCode, message: string, detail: FailureDetail = {}) {
    super(message);
    this.name = 'Failure';
    this.exitCode = exitCode;
    this.detail = detail;
  }
}

const KINDS: Readonly<Record<ExitCode, string>> = {
  0: 'done',
  1: 'internal',
  2: 'usage',
  3: 'input',
  4: 'output',
  130: 'cancelled',
};

/** One line, the shape of docs/schemas/error.schema.json. */
export const failureAsJson = (failure: Failure): string =>
  JSON.stringify({ error: { kind: KINDS[failure.exitCode], message: failure.message, ...failure.detail } });

export function failureAsText(failure: Failure): string {
  const { file, line, column, found, expected, advice } = failure.detail;
  const place = [
    ...(file === undefined ? [] : [file]),
    ...(line === undefined ? [] : [`line ${line}`]),
    ...(column === undefined ? [] : [`column ${column}`]),
  ].join(', ');
  return [
    `vaporwright: ${failure.message}`,
    ...(place === '' ? [] : [`  where:    ${place}`]),
    ...(found === undefined ? [] : [`  found:    ${found}`]),
    ...(expected === undefined ? [] : [`  expected: ${expected}`]),
    ...(advice === undefined ? [] : [`  to do:    ${advice}`]),
  ].join('\n');
}

/** The system's reason in words, where it has a known code. */
const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'no permission',
  EPERM: 'not permitted',
  EEXIST: 'a file of that name is in the way',
  EISDIR: 'this is a folder, a file was expected',
  ENOTDIR: 'a part of the path is not a folder',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk is read-only',
  EMFILE: 'too many files are open',
};

export function systemReason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}

export const cannotRead = (file: string, error: unknown): Failure =>
  new Failure(EXIT.input, `cannot read ${file}: ${systemReason(error)}`, {
    file,
    advice: 'Check the path and that you may read it.',
  });

export const cannotWrite = (file: string, error: unknown): Failure =>
  new Failure(EXIT.output, `cannot write ${file}: ${systemReason(error)}`, {
    file,
    advice: 'Choose another place, or make room and check permissions.',
  });

/** Any thrown thing as a failure; what is not one already is a fault of the program. */
export function asFailure(thrown: unknown): Failure {
  if (thrown instanceof Failure) return thrown;
  const message = thrown instanceof Error ? thrown.message : String(thrown);
  const failure = new Failure(EXIT.internal, `internal fault: ${message}`, {
    advice: 'This is a fault of the program. Please report it with the command and, if you can, the files.',
  });
  if (thrown instanceof Error && thrown.stack !== undefined) failure.stack = thrown.stack;
  return failure;
}
