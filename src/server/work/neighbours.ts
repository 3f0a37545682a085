/** What servers on one database tell each other, so that their pages show one truth. */
import { z } from 'zod';
import { MOST_NOTICE_BYTES, type Presence } from '../../jobs/database/presence.ts';
import { jobEventSchema, workSchema } from '../contract/work.ts';

const noticeSchema = z.discriminatedUnion('event', [
  z.strictObject({ event: z.literal('job'), jobId: z.uuid(), data: jobEventSchema }),
  z.strictObject({ event: z.literal('work'), jobId: z.uuid(), data: workSchema }),
  z.strictObject({ event: z.literal('cancel'), id: z.uuid() }).describe('Whoever does this work shall end it'),
  z.strictObject({ event: z.literal('accounts') }).describe('There are accounts now, or none any more'),
]);
export type Notice = z.infer<typeof noticeSchema>;

export class Neighbours {
  readonly #presence: Presence;

  constructor(presence: Presence) {
    this.#presence = presence;
  }

  tell(notice: Notice): void {
    const text = JSON.stringify(notice);
    if (Buffer.byteLength(text) <= MOST_NOTICE_BYTES) this.#presence.tell(text);
    // Only what went wrong can be long; that it did is what matters elsewhere.
    else if (notice.event === 'work' && notice.data.error !== undefined) {
      const { error: _, ...data } = notice.data;
      this.tell({ ...notice, data: { ...data, words: data.words.slice(0, 200) } });
    }
  }

  hear(listener: (notice: Notice) => void): void {
    this.#presence.hear((text) => {
      const notice = noticeSchema.safeParse(parsed(text));
      // Another version of the program may say more than this one understands.
      if (notice.success) listener(notice.data);
    });
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
