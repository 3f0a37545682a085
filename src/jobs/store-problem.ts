/** What can go wrong with a store, for the person in front of it. Wherever one of these is thrown, the data is untouched. */
export type StoreProblemCode =
  | 'disk-full'
  | 'read-only'
  | 'no-permission'
  | 'corrupt'
  | 'newer-data'
  | 'other-postgres'
  | 'old-postgres'
  | 'wrong-address'
  | 'no-answer'
  | 'wrong-login'
  | 'in-use'
  | 'no-programs'
  | 'not-empty'
  | 'bad-file'
  | 'missing-file'
  | 'failed';

export interface ProblemWords {
  /** The file, folder or address it is about. */
  readonly where?: string;
  /** What to do. */
  readonly advice: string;
  readonly cause?: unknown;
}

export class StoreProblem extends Error {
  readonly code: StoreProblemCode;
  readonly where: string | undefined;
  readonly advice: string;

  constructor(code: StoreProblemCode, message: string, words: ProblemWords) {
    super(message, words.cause === undefined ? undefined : { cause: words.cause });
    this.name = 'StoreProblem';
    this.code = code;
    this.where = words.where;
    this.advice = words.advice;
  }
}
