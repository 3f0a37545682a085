/** Captures of live recordings in a folder beside the store: what lies there is either running or was left by a program that ended. */
import { randomUUID } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { mayBeAlive, ownIdentity, type ProcessIdentity } from '../../jobs/embedded/process-identity.ts';
import { type LeftCapture, livePortSchema, liveStatusSchema } from '../contract/live.ts';

const { procedure, taken } = liveStatusSchema.shape;

const aboutSchema = z.object({
  schema: z.literal('vaporwright-live-1'),
  id: z.uuid(),
  jobId: z.uuid(),
  startedAt: z.iso.datetime(),
  by: z.string(),
  port: livePortSchema,
  taken,
  procedure,
  /** Seconds since 1970, as the capture's stamps. */
  ventShutS: z.array(z.strictObject({ fromS: z.number(), toS: z.number().exactOptional() })),
  /** The program that records; absent once it has given up. */
  recordedBy: z.object({ pid: z.number(), host: z.string(), started: z.string().optional() }).optional(),
});
export type About = z.infer<typeof aboutSchema>;

export class LiveFolder {
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  }

  capturePath(id: string): string {
    return join(this.#folder, id, 'capture.log');
  }

  /** Whole or not at all, so that a program that dies meanwhile leaves the old one. */
  write(about: Omit<About, 'schema' | 'recordedBy'>, isRunning: boolean): void {
    const folder = join(this.#folder, about.id);
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const whole = {
      ...about,
      schema: 'vaporwright-live-1',
      ...(isRunning ? { recordedBy: ownIdentity() } : {}),
    } satisfies About;
    const aside = join(folder, `about-${randomUUID()}.part`);
    writeFileSync(aside, JSON.stringify(whole), { mode: 0o600 });
    renameSync(aside, join(folder, 'about.json'));
  }

  read(id: string): About | undefined {
    try {
      return aboutSchema.parse(JSON.parse(readFileSync(join(this.#folder, id, 'about.json'), 'utf8')));
    } catch {
      return undefined;
    }
  }

  /** Captures of a job that nobody records any more, oldest first. */
  leftOf(jobId: string): LeftCapture[] {
    return readdirSync(this.#folder)
      .flatMap((id) => {
        const about = this.read(id);
        if (about === undefined || about.jobId !== jobId || isRecording(about)) return [];
        const file = statSync(this.capturePath(id), { throwIfNoEntry: false });
        // It ended before the car had said anything: there is nothing to offer.
        if (file === undefined || file.size === 0) {
          this.remove(id);
          return [];
        }
        const { startedAt, by, port, procedure: what } = about;
        return [{ id, startedAt, endedAt: file.mtime.toISOString(), by, port, procedure: what, bytes: file.size }];
      })
      .sort((a, b) => (a.startedAt < b.startedAt ? -1 : 1));
  }

  isLeft(about: About): boolean {
    return !isRecording(about);
  }

  remove(id: string): void {
    rmSync(join(this.#folder, id), { recursive: true, force: true });
  }
}

const isRecording = ({ recordedBy }: About): boolean =>
  recordedBy !== undefined && mayBeAlive(recordedBy as ProcessIdentity);
