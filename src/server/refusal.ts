/** A refusal in words for the reader, with the number that HTTP has for it. */
import type { ErrorCode, ErrorFacts } from './contract/error.ts';

const STATUS: Readonly<Record<ErrorCode, number>> = {
  'bad-request': 400,
  'sign-in': 401,
  'wrong-password': 401,
  'not-allowed': 403,
  'wrong-origin': 403,
  'stale-page': 403,
  'not-found': 404,
  'changed-meanwhile': 409,
  'not-possible': 409,
  'too-large': 413,
  'not-a-recording': 415,
  unreadable: 422,
  'too-many': 429,
  internal: 500,
  'no-room': 507,
  'store-away': 503,
};

export class Refusal extends Error {
  readonly status: number;
  readonly facts: ErrorFacts;
  /** Fields beside `error` in the answer. */
  readonly beside: Readonly<Record<string, unknown>>;

  constructor(
    code: ErrorCode,
    message: string,
    facts: Omit<ErrorFacts, 'code' | 'message'> = {},
    beside: Readonly<Record<string, unknown>> = {},
  ) {
    super(message);
    this.name = 'Refusal';
    this.status = STATUS[code];
    this.facts = { code, message, ...facts };
    this.beside = beside;
  }
}

export const notFound = (what: string): Refusal =>
  new Refusal('not-found', `There is no ${what} here.`, { advice: 'It may have been removed; go back to the list.' });
