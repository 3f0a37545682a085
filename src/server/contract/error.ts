/** How every refusal looks: what was found, where, what was expected, what to do. */
import { z } from 'zod';

/** Words for machines; the message is for people. */
export const ERROR_CODES = [
  'bad-request', // 400: body, query or path does not fit
  'sign-in', // 401: nobody is signed in
  'wrong-password', // 401
  'not-allowed', // 403: the role does not cover it
  'wrong-origin', // 403: the request comes from another page, or names another host
  'stale-page', // 403: the page's token is not of this session; fetch it anew and repeat
  'not-found', // 404
  'changed-meanwhile', // 409: somebody else changed the job; `current` is what stands
  'not-possible', // 409: the job is not in a state for it; the message says what is missing
  'too-large', // 413
  'not-a-recording', // 415: neither CSV nor gzip of one
  'unreadable', // 422: a CSV that cannot be understood; file, line, column
  'too-many', // 429
  'internal', // 500
  'no-room', // 507: the disk is full
  'store-away', // 503: the database does not answer
] as const;
export type ErrorCode = (typeof ERROR_CODES)[number];

export const errorFactsSchema = z.strictObject({
  code: z.enum(ERROR_CODES),
  message: z.string().describe('What was found, for the reader'),
  file: z.string().exactOptional(),
  line: z.int().positive().exactOptional().describe('Counted from 1'),
  column: z.int().positive().exactOptional().describe('Counted from 1'),
  found: z.string().exactOptional(),
  expected: z.string().exactOptional(),
  advice: z.string().exactOptional().describe('What to do'),
});
export type ErrorFacts = z.infer<typeof errorFactsSchema>;

export const errorBodySchema = z.strictObject({ error: errorFactsSchema }).describe('A refusal');
export type ErrorBody = z.infer<typeof errorBodySchema>;
