/** Failures of the database in words for the reader. */
import { systemCode } from '../file-problem.ts';
import { StoreProblem, type StoreProblemCode } from '../store-problem.ts';

const WORDS: Readonly<Record<string, readonly [StoreProblemCode, string, string]>> = {
  '53100': [
    'disk-full',
    'The disk of the database is full. Nothing was changed.',
    'Make room on it, then do it again.',
  ],
  '53200': [
    'disk-full',
    'The database is out of memory. Nothing was changed.',
    'End other programs, then do it again.',
  ],
  '53300': [
    'no-answer',
    'The database has no free connection.',
    'Try again in a moment, or raise its max_connections.',
  ],
  '25006': ['read-only', 'The database only allows reading.', 'Point DATABASE_URL at a server that accepts changes.'],
  '28P01': ['wrong-login', 'The database refused the password.', 'Check user and password in DATABASE_URL.'],
  '28000': [
    'wrong-login',
    'The database refused this user.',
    'Check the user in DATABASE_URL and the rules of the server.',
  ],
  '3D000': [
    'wrong-address',
    'There is no such database on the server.',
    'Check the name at the end of DATABASE_URL, or create it.',
  ],
  '42501': [
    'no-permission',
    'The database user lacks a right.',
    'Let this user create a schema in the database and use it.',
  ],
  '58030': [
    'corrupt',
    'The database cannot read or write its files.',
    'Check the disk, then restore the newest backup into a new folder.',
  ],
  XX001: [
    'corrupt',
    'The database found damaged data.',
    'Keep a copy of the folder, then restore the newest backup into a new one.',
  ],
  '57P03': ['no-answer', 'The database is starting or stopping.', 'Try again in a moment.'],
  '57P01': ['no-answer', 'The database was stopped.', 'Start it again, then try once more.'],
  '57P02': ['no-answer', 'The database has crashed and is recovering.', 'Try again in a moment.'],
  ECONNREFUSED: ['no-answer', 'No database answers.', 'Check host and port in DATABASE_URL, and that the server runs.'],
  ECONNRESET: ['no-answer', 'The connection to the database broke.', 'Try again in a moment.'],
  EPIPE: ['no-answer', 'The connection to the database broke.', 'Try again in a moment.'],
  ENOTFOUND: ['wrong-address', 'There is no such host.', 'Check the host in DATABASE_URL.'],
  EAI_AGAIN: [
    'wrong-address',
    'The host of the database could not be looked up.',
    'Check the host in DATABASE_URL and the network.',
  ],
  ETIMEDOUT: [
    'no-answer',
    'The database does not answer in time.',
    'Check host and port in DATABASE_URL, and the network.',
  ],
};

/** The same failure as a StoreProblem where it has words; else as it came. */
export function databaseProblem(error: unknown, where: string): unknown {
  if (error instanceof StoreProblem || !(error instanceof Error)) return error;
  const first = error instanceof AggregateError && error.errors[0] !== undefined ? error.errors[0] : error;
  const code = systemCode(first) ?? systemCode(error);
  const known = code === undefined ? byWords(error.message) : WORDS[code];
  if (known === undefined) return error;
  const [kind, words, advice] = known;
  return new StoreProblem(kind, `${words} (${where}: ${error.message || code})`, { where, advice, cause: error });
}

function byWords(message: string): readonly [StoreProblemCode, string, string] | undefined {
  if (/timeout/i.test(message)) return WORDS.ETIMEDOUT;
  return /Connection terminated|not queryable|Client has encountered a connection error/i.test(message)
    ? WORDS.ECONNRESET
    : undefined;
}
