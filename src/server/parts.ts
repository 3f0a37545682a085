/** What the routes work with. */
import type {
  FastifyBaseLogger,
  FastifyInstance,
  RawReplyDefaultExpression,
  RawRequestDefaultExpression,
  RawServerDefault,
} from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import type { Store } from '../jobs/open-store.ts';
import type { Doorkeeper } from './access/doorkeeper.ts';
import type { People } from './access/people.ts';
import type { Needs, Who } from './access/who.ts';
import type { LiveBoard } from './live/live-board.ts';
import type { Readings } from './recordings/readings.ts';
import type { Bell } from './work/bell.ts';
import type { WorkBoard } from './work/work-board.ts';
import type { Workshop } from './work/workshop.ts';

export interface Parts {
  readonly store: Store;
  readonly people: People;
  readonly doorkeeper: Doorkeeper;
  readonly workshop: Workshop;
  readonly board: WorkBoard;
  readonly bell: Bell;
  readonly readings: Readings;
  readonly live: LiveBoard;
  /** Name and version of the program, as findings state it. */
  readonly program: string;
  /** Address by which others reach the server, for links. */
  readonly publicAddress: () => string;
}

export type App = FastifyInstance<
  RawServerDefault,
  RawRequestDefaultExpression,
  RawReplyDefaultExpression,
  FastifyBaseLogger,
  ZodTypeProvider
>;

declare module 'fastify' {
  interface FastifyRequest {
    who: Who;
  }
  interface FastifyContextConfig {
    /** Every route under the API says who may use it; a test looks that none forgets. */
    needs?: Needs;
    /** Multipart body, for the document: field names beside `file`. */
    upload?: readonly string[];
  }
}
