/** Answers that many routes share. */
import { z } from 'zod';
import { errorBodySchema } from '../contract/error.ts';

export const REFUSALS = { '4xx': errorBodySchema, '5xx': errorBodySchema } as const;
export const NOTHING = z.null().describe('Nothing');

/** Bytes of a named kind, for the document. */
export const bytesOf = (mediaType: string, description: string) =>
  ({ description, content: { [mediaType]: { schema: z.any().describe(description) } } }) as const;
