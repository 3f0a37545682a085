/**
 * A live recording: finds the car's units, reads codes and readiness, then samples the channels that matter until it is
 * stopped; connects again by itself when the adapter is pulled out. All frames go to a file as they come.
 */
import { assembleCapture } from '../recording/bus/assemble-capture.ts';
import { BusLog } from '../recording/bus/bus-log.ts';
import { LineCounts } from '../recording/bus/capture-counts.ts';
import { dataItem, isSupportItem } from '../recording/bus/data-items.ts';
import { emptyFrame } from '../recording/bus/frame.ts';
import type { CaptureReading } from '../recording/bus/read-capture.ts';
import { CaptureClock } from '../recording/bus/stamps.ts';
import type { CaptureFile } from './capture-file.ts';
import { type FoundUnit, findUnits, readStatus } from './find-units.ts';
import type { BusFrame, FramePort } from './frame-port.ts';
import { ObdClient, type Reply } from './obd-client.ts';
import { makeSchedule, RequestTurns, wantedItems } from './schedule.ts';

export type LiveState = 'connecting' | 'finding' | 'reading-status' | 'sampling' | 'waiting' | 'stopped';

export interface LiveSample {
  readonly item: number;
  readonly name: string;
  /** Seconds since 1970. */
  readonly timeS: number;
  /** SI; item $54 is raw. */
  readonly value: number;
}

export interface LiveOptions {
  readonly open: () => Promise<FramePort>;
  readonly file: CaptureFile;
  readonly label: string;
  /** Items to sample instead of the usual ones; asked for in every turn. */
  readonly items?: readonly number[];
  readonly onState?: (state: LiveState, words: string) => void;
  readonly onSample?: (sample: LiveSample) => void;
  /** Seconds since 1970, rising. */
  readonly now?: () => number;
}

const RETRY_FIRST_MS = 100;
const RETRY_LONGEST_MS = 2000;
/** So many requests in a row without an answer are a lost car (judgement). */
const SILENT_REQUESTS = 10;

const monotonicNow = (): number => (performance.timeOrigin + performance.now()) / 1000;

export class LiveSession {
  state: LiveState = 'connecting';
  /** Samples that came in, over all items. */
  samples = 0;
  reconnections = 0;
  requests = 0;
  private readonly options: LiveOptions;
  private readonly log: BusLog;
  private readonly counts = new LineCounts();
  private readonly clock = new CaptureClock('since-1970');
  private readonly scratch = emptyFrame();
  private readonly now: () => number;
  private port: FramePort | undefined;
  private client: ObdClient | undefined;
  private units: readonly FoundUnit[] = [];
  private hasStatus = false;
  private isStopped = false;
  private pausedSince: number | undefined;
  private running: Promise<void> | undefined;
  private wakeUp: () => void = () => {};

  constructor(options: LiveOptions) {
    this.options = options;
    const now = options.now ?? monotonicNow;
    // As the file has it, so that both say the same.
    this.now = () => Math.round(now() * 1e6) / 1e6;
    this.log = new BusLog({
      onItem: (_, item, timeS, value) => {
        this.samples++;
        options.onSample?.({ item, name: dataItem(item)?.name ?? '', timeS, value });
      },
    });
  }

  start(): void {
    this.running ??= this.run();
  }

  /** Ends after the request that is out; what was recorded stands in the file. */
  async stop(): Promise<void> {
    this.end();
    await this.running;
    if (this.state !== 'stopped') this.setState('stopped', 'stopped');
  }

  /** Seconds since 1970 on the capture's clock. */
  clockS(): number {
    return this.now();
  }

  /** Stretches without the adapter; the last one has no end while it lasts. */
  get pauses(): readonly { readonly fromS: number; readonly toS?: number }[] {
    const { pausedSince } = this;
    return pausedSince === undefined ? this.log.pauses : [...this.log.pauses, { fromS: pausedSince }];
  }

  /** Everything so far, as a capture read from the file would give it. */
  reading(): CaptureReading {
    return assembleCapture({ log: this.log, clock: this.clock, counts: this.counts }, { fileName: this.options.label });
  }

  /**
   * Service $04, between two samples; gives what the units answered, after codes and readiness were read anew. The caller
   * has asked, explained and saved.
   *
   * @throws when the car is not being sampled, or goes away before it was asked
   */
  async clearCodes(): Promise<readonly Reply[]> {
    if (this.client === undefined || this.state !== 'sampling' || this.between !== undefined)
      throw new Error('the car is not connected');
    return await new Promise((resolve, reject) => {
      const work = async (client: ObdClient): Promise<void> => {
        const replies = await client.clearCodes();
        this.hasStatus = false;
        try {
          await readStatus(client, this.units);
          this.lineMustStand();
          this.hasStatus = true;
        } finally {
          resolve(replies);
        }
      };
      this.between = { work, reject };
    });
  }
  private between:
    | { readonly work: (client: ObdClient) => Promise<void>; readonly reject: (error: Error) => void }
    | undefined;

  private end(): void {
    this.isStopped = true;
    this.client?.abort();
    this.dropPort();
    this.wakeUp();
    this.between?.reject(new Error('the recording was stopped before the car was asked'));
    this.between = undefined;
  }

  private setState(state: LiveState, words: string): void {
    this.state = state;
    this.options.onState?.(state, words);
  }

  private async run(): Promise<void> {
    let retryMs = RETRY_FIRST_MS;
    while (!this.isStopped) {
      try {
        await this.connect();
        retryMs = RETRY_FIRST_MS;
        await this.sample();
      } catch (error) {
        const words = error instanceof Error ? error.message : String(error);
        this.pause();
        if (this.isStopped) break;
        this.setState('waiting', `${words}; trying again`);
        await new Promise<void>((resolve) => {
          const timer = setTimeout(resolve, retryMs);
          this.wakeUp = () => {
            clearTimeout(timer);
            resolve();
          };
        });
        retryMs = Math.min(RETRY_LONGEST_MS, retryMs * 1.5);
      }
    }
    this.dropPort();
  }

  /** What still comes from a line that is being closed belongs to nothing. */
  private dropPort(): void {
    const { port } = this;
    this.port = undefined;
    if (port === undefined) return;
    port.onFrames = () => {};
    port.onClosed = () => {};
    port.close();
  }

  private pause(): void {
    this.client?.abort();
    this.client = undefined;
    this.dropPort();
    this.between?.reject(new Error('the car went away before it was asked'));
    this.between = undefined;
    if (this.pausedSince !== undefined) return;
    const timeS = this.now();
    this.pausedSince = timeS;
    this.keep(() => this.options.file.pauseBegins(timeS));
    this.log.pauseBegins(timeS);
  }

  private async connect(): Promise<void> {
    this.setState('connecting', 'connecting');
    const port = await this.options.open();
    if (this.isStopped) {
      port.close();
      return;
    }
    this.port = port;
    const client = new ObdClient((frame) => {
      this.record([frame]);
      port.send(frame);
    });
    this.client = client;
    port.onFrames = (frames) => {
      this.record(frames);
      client.take(frames);
    };
    port.onClosed = () => {
      if (this.port === port) this.port = undefined;
      client.abort();
    };
    if (this.pausedSince !== undefined) {
      this.pausedSince = undefined;
      this.reconnections++;
      const timeS = this.now();
      this.keep(() => this.options.file.pauseEnds(timeS));
      this.log.pauseEnds(timeS);
    }
    if (this.units.length === 0) {
      this.setState('finding', 'looking for control units');
      this.units = await findUnits(client);
      this.lineMustStand();
      if (this.units.length === 0) throw new Error('no control unit answers; is the key on?');
    }
    if (!this.hasStatus) {
      this.setState('reading-status', 'reading codes and readiness');
      await readStatus(client, this.units);
      this.lineMustStand();
      this.hasStatus = true;
    }
  }

  private lineMustStand(): void {
    if (this.port === undefined && !this.isStopped) throw new Error('the adapter is gone');
  }

  /** What cannot be kept is not recorded: a full disk ends the recording, not the program. */
  private keep(write: () => void): boolean {
    try {
      write();
      return true;
    } catch (error) {
      if (!this.isStopped) {
        this.end();
        this.setState('stopped', `the recording cannot be written: ${error instanceof Error ? error.message : error}`);
      }
      return false;
    }
  }

  /** Frames to the file and to the log, with one stamp for what came together. */
  private record(frames: readonly BusFrame[]): void {
    const timeS = this.now();
    if (!this.keep(() => this.options.file.write(frames, timeS))) return;
    for (const { id, extended, data } of frames) {
      this.counts.lines++;
      this.counts.frames++;
      const { scratch } = this;
      scratch.timeS = timeS;
      scratch.id = id;
      scratch.extended = extended;
      scratch.length = data.length;
      scratch.data.set(data);
      this.log.take(scratch);
    }
  }

  /** Requests of each unit; a second unit is asked only for what the first does not have. */
  private turns(): { readonly unit: FoundUnit; readonly turns: RequestTurns }[] {
    const covered = new Set<number>();
    const wanted = ({ items }: FoundUnit) =>
      this.options.items === undefined
        ? wantedItems(items)
        : { fast: this.options.items.filter((item) => items.has(item) && !isSupportItem(item)), slow: [] };
    const ranked = [...this.units].sort((a, b) => wanted(b).fast.length - wanted(a).fast.length);
    return ranked.flatMap((unit) => {
      const { fast, slow } = wanted(unit);
      const schedule = makeSchedule(
        fast.filter((item) => !covered.has(item)),
        slow.filter((item) => !covered.has(item)),
        unit.perRequest,
      );
      for (const item of [...fast, ...slow]) covered.add(item);
      return schedule.length === 0 ? [] : [{ unit, turns: new RequestTurns(schedule) }];
    });
  }

  private async sample(): Promise<void> {
    const client = this.client!;
    const turns = this.turns();
    if (turns.length === 0) throw new Error('the car has none of the items that are wanted');
    this.setState('sampling', 'recording');
    let silent = 0;
    for (let k = 0; !this.isStopped; k++) {
      const { unit, turns: requests } = turns[k % turns.length]!;
      this.requests++;
      const replies = await client.ask(unit.address, [0x01, ...requests.next().items]);
      if (this.isStopped) return;
      this.lineMustStand();
      silent = replies.length === 0 ? silent + 1 : 0;
      if (silent >= SILENT_REQUESTS) throw new Error('the car no longer answers');
      if (this.between !== undefined) {
        const { work } = this.between;
        await work(client);
        this.between = undefined;
      }
    }
  }
}
