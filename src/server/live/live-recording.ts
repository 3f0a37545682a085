/** One recording that runs: the car's line, the file, the rows for the pages, the finding that grows in a thread. */
import { randomUUID } from 'node:crypto';
import { EventEmitter, once } from 'node:events';
import type { MessagePort } from 'node:worker_threads';
import { CaptureFile } from '../../capture/capture-file.ts';
import { LiveRows } from '../../capture/live-rows.ts';
import { type LiveSample, LiveSession } from '../../capture/live-session.ts';
import type { Reply } from '../../capture/obd-client.ts';
import { openPort, USUAL_PORT } from '../../capture/open-port.ts';
import { idInWords } from '../../recording/bus/address.ts';
import type { ChannelName, ShutTime } from '../../recording/recording.ts';
import type { LiveChange, LiveFollow, LiveOver, LiveRowsEvent, LiveStatus } from '../contract/live.ts';
import { MAX_RECORDING_BYTES } from '../contract/paths.ts';
import { captureFacts } from '../recordings/capture-facts.ts';
import type { Workshop } from '../work/workshop.ts';
import type { About, LiveFolder } from './live-folder.ts';
import type { FollowTask, FromFollower, FromSimulatedCar, ToFollower } from './live-tasks.ts';
import { RateMeter } from './rate-meter.ts';
import { RowLog } from './row-log.ts';

const TELL_EVERY_MS = 500;

export interface LiveRecordingOptions {
  readonly about: Omit<About, 'schema' | 'recordedBy' | 'id' | 'ventShutS'>;
  readonly folder: LiveFolder;
  readonly workshop: Workshop;
  readonly car: FollowTask['car'];
  readonly known: FollowTask['known'];
  readonly onFault: (error: unknown) => void;
}

interface Events {
  status: [LiveStatus];
  rows: [];
  follow: [LiveFollow];
  over: [LiveOver];
}

export class LiveRecording {
  readonly id = randomUUID();
  readonly rows = new RowLog();
  /** `rows`: there are more of them. */
  readonly events = new EventEmitter<Events>();
  #follow: LiveFollow | undefined;
  #about: Omit<About, 'schema' | 'recordedBy'>;
  readonly #options: LiveRecordingOptions;
  readonly #file: CaptureFile;
  readonly #session: LiveSession;
  readonly #liveRows = new LiveRows();
  readonly #rate = new RateMeter();
  readonly #beat: NodeJS.Timeout;
  #follower: MessagePort | undefined;
  #car: MessagePort | undefined;
  #follows: LiveStatus['follows'];
  #problem: string | null = null;
  #said: LiveStatus['said'] = null;
  #clearedAt: string | null = null;
  #told = '';

  constructor(options: LiveRecordingOptions) {
    // One for each page that looks on.
    this.events.setMaxListeners(0);
    this.#options = options;
    this.#about = { ...options.about, id: this.id, ventShutS: [] };
    this.#options.folder.write(this.#about, true);
    this.#file = new CaptureFile(options.folder.capturePath(this.id));
    this.#follows = options.car === null ? 'no-car' : 'finding';
    this.#session = new LiveSession({
      open: async () => openPort(await this.#address(), this.#portOptions()),
      file: this.#file,
      label: 'live',
      onState: (state, words) => this.#heard(state, words),
      onSample: (sample) => this.#take(sample),
    });
    this.#beginFollowing();
    this.#beat = setInterval(() => this.#tell(), TELL_EVERY_MS);
    this.#session.start();
  }

  get about(): Omit<About, 'schema' | 'recordedBy'> {
    return this.#about;
  }

  get follow(): LiveFollow | undefined {
    return this.#follow;
  }

  get capturePath(): string {
    return this.#file.path;
  }

  status(): LiveStatus {
    const { id, jobId, startedAt, by, port, taken, procedure, ventShutS } = this.#about;
    const session = this.#session;
    const zeroS = this.#liveRows.firstS;
    const onOurClock = ({ fromS, toS }: ShutTime): ShutTime => ({
      fromS: fromS - (zeroS ?? fromS),
      ...(toS === undefined ? {} : { toS: toS - (zeroS ?? fromS) }),
    });
    const nowS = session.clockS();
    return {
      id,
      jobId,
      startedAt,
      by,
      port,
      state: session.state,
      problem: this.#problem,
      taken,
      procedure,
      samples: session.samples,
      rateHz: this.#rate.all(nowS),
      rows: this.rows.length,
      durationS: this.rows.lastS,
      bytes: this.#file.bytes,
      channels: this.rows.counts().map(({ name, samples }) => ({ name, samples, rateHz: this.#rate.of(name, nowS) })),
      reconnections: session.reconnections,
      pauses: session.pauses.map(onOurClock),
      ventMarks: ventShutS.map(onOurClock),
      follows: this.#follows,
      said: this.#said,
      clearedAt: this.#clearedAt,
    };
  }

  change({ procedure, vent }: LiveChange): void {
    const nowS = this.#session.clockS();
    let { ventShutS } = this.#about;
    const open = ventShutS.findIndex(({ toS }) => toS === undefined);
    if (vent === 'forget') ventShutS = [];
    else if (vent === 'shut' && open < 0) ventShutS = [...ventShutS, { fromS: nowS }];
    else if (vent === 'open' && open >= 0) ventShutS = ventShutS.with(open, { ...ventShutS[open]!, toS: nowS });
    this.#about = { ...this.#about, ventShutS, ...(procedure === undefined ? {} : { procedure }) };
    this.#options.folder.write(this.#about, this.#stopping === undefined);
    const status = this.status();
    this.#send({ kind: 'said', procedure: status.procedure, ventMarks: status.ventMarks });
    this.#tell();
  }

  /** Service $04; what the car had said is the caller's to save first. */
  async clearCodes(): Promise<readonly string[]> {
    const replies: readonly Reply[] = await this.#session.clearCodes();
    const units = replies
      .filter(({ message }) => message[0] === 0x44)
      .map(({ unit }) => idInWords(unit.id, unit.extended));
    if (units.length > 0) this.#clearedAt = new Date().toISOString();
    this.#readSaid();
    this.#tell();
    return units;
  }

  /** The line is given back; the file stays, with all that came. */
  stop(): Promise<void> {
    this.#stopping ??= this.#stop();
    return this.#stopping;
  }
  #stopping: Promise<void> | undefined;

  async #stop(): Promise<void> {
    await this.#session.stop();
    clearInterval(this.#beat);
    this.#tell(true);
    this.#send({ kind: 'end' });
    this.#follower?.close();
    this.#car?.close();
    this.#file.close();
    try {
      this.#options.folder.write(this.#about, false);
    } catch (error) {
      // A full disk: what was recorded stands all the same, and is still held here to be kept.
      this.#options.onFault(error);
    }
  }

  over(over: LiveOver): void {
    this.events.emit('over', over);
    this.events.removeAllListeners();
  }

  #portOptions() {
    const { port } = this.#about;
    return port.kind === 'adapter' && port.bitRate !== undefined
      ? { ...USUAL_PORT, bitRate: port.bitRate }
      : USUAL_PORT;
  }

  #simulated: Promise<string> | undefined;
  #address(): Promise<string> {
    const { port } = this.#about;
    if (port.kind === 'adapter') return Promise.resolve(port.address);
    this.#simulated ??= this.#startCar(port);
    return this.#simulated;
  }

  async #startCar({ layout, fault, startS = 0 }: Extract<About['port'], { kind: 'simulated' }>): Promise<string> {
    const { port, ended } = this.#options.workshop.begin('simulatedCar', { layout, fault, startS });
    this.#car = port;
    const failed = ended.then(() => Promise.reject(new Error('the simulated car has ended')));
    // Later ends are of no interest: the line says that the car is gone.
    failed.catch(() => {
      this.#simulated = undefined;
    });
    const [{ address }] = (await Promise.race([once(port, 'message'), failed])) as [FromSimulatedCar];
    return address;
  }

  #beginFollowing(): void {
    const { workshop, car, known, onFault } = this.#options;
    const { port, ended } = workshop.begin('follow', { car, known, procedure: this.#about.procedure });
    this.#follower = port;
    port.on('message', (follow: FromFollower) => {
      this.#follow = follow;
      this.events.emit('follow', follow);
    });
    ended.catch((error: unknown) => {
      this.#follower = undefined;
      if (this.#session.state === 'stopped') return;
      this.#follows = 'failed';
      onFault(error);
    });
  }

  #send(message: ToFollower): void {
    this.#follower?.postMessage(message);
  }

  #heard(state: LiveStatus['state'], words: string): void {
    this.#problem = state === 'waiting' || (state === 'stopped' && words !== 'stopped') ? words : null;
    if (state === 'sampling') this.#readSaid();
    // What ends by itself (a full disk) is told as well.
    this.#tell();
  }

  #readSaid(): void {
    this.#said = captureFacts(this.#session.reading()) ?? null;
  }

  #take(sample: LiveSample): void {
    this.#liveRows.add(sample);
  }

  #tell(isOver = false): void {
    const rows = this.#liveRows.take(isOver);
    if (rows !== undefined) {
      this.rows.add(rows);
      for (const [name, values] of Object.entries(rows.channels))
        for (let i = 0; i < values.length; i++)
          if (!Number.isNaN(values[i]!)) this.#rate.add(name as ChannelName, rows.timeS[i]! + this.#liveRows.firstS!);
      this.#send({ kind: 'rows', rows });
      this.events.emit('rows');
    }
    const status = this.status();
    const told = JSON.stringify(status);
    if (told !== this.#told) this.events.emit('status', status);
    this.#told = told;
    if (status.bytes > MAX_RECORDING_BYTES && status.state !== 'stopped') {
      void this.#session.stop().then(() => {
        this.#problem = 'the recording is as large as a recording may be';
        this.#tell();
      });
    }
  }

  /** Rows after those that a page has, as an event. */
  rowsAfter(from: number): LiveRowsEvent | undefined {
    return this.rows.after(from);
  }
}
