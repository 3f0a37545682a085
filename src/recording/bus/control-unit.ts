import { GrowingNumbers } from '../raw-column.ts';
import { dataItem } from './data-items.ts';
import { decodeReply, type MessageReason, type ReplySink } from './decode-message.ts';
import type { CanFrame } from './frame.ts';
import { type FlowControl, MessageAssembler, readFlowControl } from './iso-tp.ts';
import type { MonitorStatus } from './monitor-status.ts';
import type { NegativeResponse } from './negative-response.ts';
import type { TestResult } from './test-results.ts';
import type { CodeStatus } from './trouble-codes.ts';
import type { InUseCounters } from './vehicle-information.ts';

/** Samples of one data item of one control unit, in SI units and on the capture's clock. */
export class ItemSamples {
  readonly times = new GrowingNumbers();
  readonly values = new GrowingNumbers();
  lastTimeS = Number.NEGATIVE_INFINITY;
}

export interface FreezeFrame {
  readonly number: number;
  code?: string;
  readonly items: Map<number, number>;
}

/** How soon a unit answered, from request to first frame of the answer. */
export interface ReplyTimes {
  count: number;
  sumS: number;
  longestS: number;
}

/** Replies that come later than this belong to no request (judgement: P2 is 50 ms, and answers may be put off). */
const LATEST_REPLY_S = 5;

/** All that one control unit has said. */
export class ControlUnit implements ReplySink {
  readonly id: number;
  readonly extended: boolean;
  readonly assembler = new MessageAssembler();
  readonly samples = new Map<number, ItemSamples>();
  readonly supportedIds = new Map<number, Set<number>>();
  readonly codeLists: Partial<Record<CodeStatus, readonly string[]>> = {};
  readonly freezeFrames = new Map<number, FreezeFrame>();
  readonly results = new Map<string, TestResult>();
  readonly negatives = new Map<string, { readonly response: NegativeResponse; count: number }>();
  readonly unread = new Map<MessageReason, number>();
  readonly replyTimes: ReplyTimes = { count: 0, sumS: 0, longestS: 0 };
  readonly latestItems = new Map<number, number>();
  sinceClear: MonitorStatus | undefined;
  thisDrive: MonitorStatus | undefined;
  vinText: string | undefined;
  inUse: InUseCounters | undefined;
  clearedTimes: (number | undefined)[] = [];
  flowControl: FlowControl | undefined;
  /** Samples that came before an earlier one of the same item and were left out. */
  backward = 0;
  kept = 0;
  private nowS: number | undefined;
  private askedS: number | undefined;
  private readonly mayKeep: () => boolean;
  private readonly onItem: ((unit: ControlUnit, id: number, timeS: number, value: number) => void) | undefined;

  constructor(
    id: number,
    extended: boolean,
    mayKeep: () => boolean,
    onItem?: (unit: ControlUnit, id: number, timeS: number, value: number) => void,
  ) {
    this.id = id;
    this.extended = extended;
    this.mayKeep = mayKeep;
    this.onItem = onItem;
  }

  /** A frame that this unit sent. */
  reply(frame: CanFrame): void {
    const message = this.assembler.take(frame);
    if (frame.timeS !== undefined && this.askedS !== undefined && frame.data[0]! >> 4 <= 1) {
      const delayS = frame.timeS - this.askedS;
      if (delayS >= 0 && delayS < LATEST_REPLY_S) {
        this.replyTimes.count++;
        this.replyTimes.sumS += delayS;
        this.replyTimes.longestS = Math.max(this.replyTimes.longestS, delayS);
      }
      this.askedS = undefined;
    }
    if (message === undefined) return;
    // What was sampled is older than the answer's last frame by the time that the others took.
    this.nowS = this.assembler.startedS;
    const reason = decodeReply(message, this);
    if (reason !== undefined) this.unread.set(reason, (this.unread.get(reason) ?? 0) + 1);
  }

  /** A request to all units went out before this one was known. */
  askedAt(timeS: number | undefined): void {
    this.askedS = timeS;
  }

  /** A frame that was sent to this unit, or to all. */
  asked(frame: CanFrame): void {
    const isFlowControl = frame.length > 2 && frame.data[0]! >> 4 === 3;
    if (isFlowControl) this.flowControl = readFlowControl(frame.data);
    else this.askedS = frame.timeS;
    this.assembler.peerFrame(isFlowControl ? 'flow-control' : 'request', frame.data);
  }

  item(id: number, data: Uint8Array, at: number): void {
    const item = dataItem(id);
    if (item === undefined) return;
    const value = item.value(data, at);
    this.latestItems.set(id, value);
    const timeS = this.nowS;
    if (timeS === undefined) return;
    let samples = this.samples.get(id);
    if (samples === undefined) {
      samples = new ItemSamples();
      this.samples.set(id, samples);
    }
    if (timeS <= samples.lastTimeS) {
      this.backward++;
      return;
    }
    if (!this.mayKeep()) return;
    samples.lastTimeS = timeS;
    samples.times.push(timeS);
    samples.values.push(value);
    this.kept++;
    this.onItem?.(this, id, timeS, value);
  }

  supported(service: number, ids: readonly number[]): void {
    const known = this.supportedIds.get(service) ?? new Set<number>();
    for (const id of ids) known.add(id);
    this.supportedIds.set(service, known);
  }

  monitorStatus(status: MonitorStatus): void {
    if (status.scope === 'since-clear') this.sinceClear = status;
    else this.thisDrive = status;
  }

  freezeItem(frameNumber: number, id: number, data: Uint8Array, at: number): void {
    const item = dataItem(id);
    if (item !== undefined) this.freezeFrame(frameNumber).items.set(id, item.value(data, at));
  }

  freezeCode(frameNumber: number, code: string): void {
    this.freezeFrame(frameNumber).code = code;
  }

  codes(status: CodeStatus, codes: readonly string[]): void {
    this.codeLists[status] = codes;
  }

  testResults(results: readonly TestResult[]): void {
    for (const result of results) this.results.set(`${result.monitorId} ${result.testId}`, result);
  }

  vin(vin: string): void {
    this.vinText = vin;
  }

  counters(counters: InUseCounters): void {
    this.inUse = counters;
  }

  cleared(): void {
    this.clearedTimes.push(this.nowS);
  }

  negative(response: NegativeResponse): void {
    const key = `${response.service} ${response.reasonCode}`;
    const known = this.negatives.get(key);
    if (known === undefined) this.negatives.set(key, { response, count: 1 });
    else known.count++;
  }

  private freezeFrame(number: number): FreezeFrame {
    let frame = this.freezeFrames.get(number);
    if (frame === undefined) {
      frame = { number, items: new Map() };
      this.freezeFrames.set(number, frame);
    }
    return frame;
  }
}
