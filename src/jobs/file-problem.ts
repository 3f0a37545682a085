/** Failures of the file system in words for the reader. */
import { StoreProblem } from './store-problem.ts';

export function systemCode(error: unknown): string | undefined {
  if (typeof error !== 'object' || error === null || !('code' in error)) return undefined;
  return typeof error.code === 'string' ? error.code : undefined;
}

/** The same failure as a StoreProblem where it is one that a reader can do something about; else as it came. */
export function fileProblem(error: unknown, doing: string, where: string): unknown {
  if (error instanceof StoreProblem) return error;
  switch (systemCode(error)) {
    case 'ENOSPC':
    case 'EDQUOT':
      return new StoreProblem('disk-full', `The disk is full: ${doing} failed at ${where}. Nothing was changed.`, {
        where,
        advice: 'Make room on this disk, then do it again.',
        cause: error,
      });
    case 'EROFS':
      return new StoreProblem('read-only', `The disk is read-only: ${doing} failed at ${where}.`, {
        where,
        advice: 'Choose a folder on a disk that can be written, with --data.',
        cause: error,
      });
    case 'EACCES':
    case 'EPERM':
      return new StoreProblem('no-permission', `No permission: ${doing} failed at ${where}.`, {
        where,
        advice: 'Give this user the right to write there, or choose another folder with --data.',
        cause: error,
      });
    case 'ENOTDIR':
    case 'EEXIST':
      return new StoreProblem('corrupt', `A folder was expected at ${where}, a file was found: ${doing} failed.`, {
        where,
        advice: 'Choose another folder with --data.',
        cause: error,
      });
    default:
      return error;
  }
}
