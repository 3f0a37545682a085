/** Live recordings by job: begun, changed, kept, discarded; and those that a program left that died. */

import { isAdapterAddress } from '../../capture/find-ports.ts';
import type { Actor } from '../../jobs/job-store.ts';
import type { Job } from '../../jobs/record/job.ts';
import { typicalScenario } from '../../simulation/typical-scenarios.ts';
import type { LeftCapture, LivePort, LiveStart } from '../contract/live.ts';
import { knownOf } from '../finding/known-of.ts';
import { notFound, Refusal } from '../refusal.ts';
import type { Workshop } from '../work/workshop.ts';
import { type About, LiveFolder } from './live-folder.ts';
import { LiveRecording } from './live-recording.ts';

/** Adapters that one machine looks after at once. Judgement. */
const MOST_AT_ONCE = 4;

/** A capture that has ended, to be taken into the job or thrown away. */
export interface EndedCapture {
  readonly about: Omit<About, 'schema' | 'recordedBy'>;
  readonly path: string;
}

export interface BegunBy {
  readonly job: Job;
  readonly actor: Actor;
  readonly onFault: (error: unknown) => void;
}

export class LiveBoard {
  readonly #folder: LiveFolder;
  readonly #workshop: Workshop;
  readonly #running = new Map<string, LiveRecording>();
  readonly #deciding = new Set<string>();

  constructor(folder: string, workshop: Workshop) {
    this.#folder = new LiveFolder(folder);
    this.#workshop = workshop;
  }

  of(jobId: string): LiveRecording | undefined {
    return this.#running.get(jobId);
  }

  leftOf(jobId: string): readonly LeftCapture[] {
    return this.#folder.leftOf(jobId);
  }

  begin({ port, procedure, taken }: LiveStart, { job, actor, onFault }: BegunBy): LiveRecording {
    if (this.#running.has(job.id))
      throw new Refusal('not-possible', 'A recording of this job is running already.', {
        advice: 'Stop it first, and keep or discard it.',
      });
    this.#checkPort(port);
    const when = taken ?? (job.repairs.length > 0 ? 'after-repair' : 'before-repair');
    const { complaints, codes } = knownOf(job, [{ taken: when }]);
    const live = new LiveRecording({
      about: {
        jobId: job.id,
        startedAt: new Date().toISOString(),
        by: actor.name,
        port,
        taken: when,
        procedure,
      },
      folder: this.#folder,
      workshop: this.#workshop,
      car: job.car,
      known: { complaints, codes },
      onFault,
    });
    this.#running.set(job.id, live);
    return live;
  }

  /** The running one, or a refusal. */
  need(jobId: string): LiveRecording {
    const live = this.#running.get(jobId);
    if (live !== undefined) return live;
    throw new Refusal('not-possible', 'No recording of this job is running.', {
      advice: 'It may have been ended on another page; load this one anew.',
    });
  }

  /**
   * Stops it when it runs, and has it decided on by one at a time. Until it is released it stays, whatever goes wrong in between.
   */
  async decide<T>(jobId: string, id: string, work: (ended: EndedCapture) => Promise<T>): Promise<T> {
    if (this.#deciding.has(id))
      throw new Refusal('not-possible', 'This recording is being taken in or thrown away already.');
    this.#deciding.add(id);
    try {
      return await work(await this.#end(jobId, id));
    } finally {
      this.#deciding.delete(id);
    }
  }

  async #end(jobId: string, id: string): Promise<EndedCapture> {
    const running = this.#running.get(jobId);
    if (running?.id === id) {
      await running.stop();
      return { about: running.about, path: running.capturePath };
    }
    const about = this.#folder.read(id);
    if (about === undefined || about.jobId !== jobId || !this.#folder.isLeft(about))
      throw notFound('recording of that kind');
    return { about, path: this.#folder.capturePath(id) };
  }

  /** It is in the job, or nobody wants it: its folder goes. `left`: it stays, to be offered again. */
  release(jobId: string, id: string, how: 'kept' | 'discarded' | 'left', recordingId: string | null = null): void {
    if (how !== 'left') this.#folder.remove(id);
    const running = this.#running.get(jobId);
    if (running?.id !== id) return;
    this.#running.delete(jobId);
    running.over({ how, recordingId });
  }

  async close(): Promise<void> {
    for (const [jobId, live] of [...this.#running]) {
      await live.stop();
      this.release(jobId, live.id, 'left');
    }
  }

  #checkPort(port: LivePort): void {
    if (this.#running.size >= MOST_AT_ONCE)
      throw new Refusal('too-many', `${MOST_AT_ONCE} recordings run already.`, { advice: 'End one of them first.' });
    if (port.kind === 'simulated') {
      checkFault(port);
      return;
    }
    if (!isAdapterAddress(port.address))
      throw new Refusal('bad-request', 'That is no address of an adapter.', {
        found: port.address,
        expected: 'a serial device such as /dev/ttyACM0 or COM3, a CAN network such as can0, or tcp://127.0.0.1:PORT',
      });
    for (const { about } of this.#running.values())
      if (about.port.kind === 'adapter' && about.port.address === port.address)
        throw new Refusal('not-possible', `The adapter ${port.address} is in use by another recording.`, {
          advice: 'End that one first, or use another adapter.',
        });
  }
}

function checkFault({ layout, fault }: Extract<LivePort, { kind: 'simulated' }>): void {
  try {
    typicalScenario(layout, fault === undefined ? [] : [fault]);
  } catch (error) {
    throw new Refusal('bad-request', 'A car of this layout cannot have this fault.', {
      found: `${layout}, ${fault?.kind ?? ''}${fault?.place === undefined ? '' : ` at ${fault.place}`}`,
      ...(error instanceof Error ? { expected: error.message } : {}),
    });
  }
}
