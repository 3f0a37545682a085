/**
 * Asks control units and puts their answers together, within ISO 15765-4: one request outstanding per unit, P2 kept, flow
 * control given at once. Reading services only; to clear codes is a method of its own.
 */
import { addressRole, functionalId, requestId } from '../recording/bus/address.ts';
import { emptyFrame } from '../recording/bus/frame.ts';
import { MessageAssembler } from '../recording/bus/iso-tp.ts';
import { RESPONSE_PENDING } from '../recording/bus/negative-response.ts';
import { continueFrame, segmentMessage } from '../recording/bus/segment-message.ts';
import type { BusFrame } from './frame-port.ts';

/** P2 and its extension after "answer will follow", from memory (ISO 15765-4); and what an adapter and its line add (judgement). */
export const P2_MS = 50;
export const P2_EXTENDED_MS = 5000;
const LINE_MS = 60;
const READING_SERVICES: ReadonlySet<number> = new Set([0x01, 0x02, 0x03, 0x06, 0x07, 0x09, 0x0a]);
const CLEAR_SERVICE = 0x04;

export interface UnitAddress {
  /** Identifier of its replies. */
  readonly id: number;
  readonly extended: boolean;
}

export interface Reply {
  readonly unit: UnitAddress;
  readonly message: Uint8Array;
}

interface Outstanding {
  readonly unit: UnitAddress | undefined;
  readonly service: number;
  readonly replies: Reply[];
  timer: NodeJS.Timeout;
  readonly done: (replies: Reply[]) => void;
}

const keyOf = ({ id, extended }: UnitAddress): string => `${extended ? 'x' : ''}${id}`;

export class ObdClient {
  private readonly sendFrame: (frame: BusFrame) => void;
  private readonly assemblers = new Map<string, MessageAssembler>();
  private readonly scratch = emptyFrame();
  private outstanding: Outstanding | undefined;
  requests = 0;
  timeOuts = 0;

  constructor(sendFrame: (frame: BusFrame) => void) {
    this.sendFrame = sendFrame;
  }

  /** Asks one unit, or all of a kind of identifier; gives what came, nothing when nothing did. */
  ask(to: UnitAddress | 'all' | 'all-extended', payload: readonly number[]): Promise<Reply[]> {
    if (!READING_SERVICES.has(payload[0]!))
      throw new Error(`service $${payload[0]!.toString(16)} is none of those that only read`);
    return this.send(to, payload);
  }

  /** Service $04. The caller has asked the person and saved everything. */
  clearCodes(): Promise<Reply[]> {
    return this.send('all', [CLEAR_SERVICE], P2_EXTENDED_MS);
  }

  /** Frames that came in. */
  take(frames: readonly BusFrame[]): void {
    for (const frame of frames) this.takeOne(frame);
  }

  /** The line is gone: nothing more will come. */
  abort(): void {
    this.assemblers.clear();
    this.finish();
  }

  private send(to: UnitAddress | 'all' | 'all-extended', payload: readonly number[], waitMs = P2_MS): Promise<Reply[]> {
    if (this.outstanding !== undefined) throw new Error('a request is outstanding');
    const unit = typeof to === 'string' ? undefined : to;
    const extended = unit?.extended ?? to === 'all-extended';
    const id = unit === undefined ? functionalId(extended) : requestId(unit.id, unit.extended);
    this.requests++;
    return new Promise((done) => {
      this.outstanding = { unit, service: payload[0]!, replies: [], timer: this.timeOut(waitMs + LINE_MS), done };
      for (const data of segmentMessage(Uint8Array.from(payload))) this.sendFrame({ id, extended, data });
    });
  }

  private timeOut(ms: number): NodeJS.Timeout {
    return setTimeout(() => {
      if (this.outstanding?.replies.length === 0) this.timeOuts++;
      this.finish();
    }, ms);
  }

  private finish(): void {
    const { outstanding } = this;
    if (outstanding === undefined) return;
    this.outstanding = undefined;
    clearTimeout(outstanding.timer);
    outstanding.done(outstanding.replies);
  }

  private takeOne(frame: BusFrame): void {
    const { id, extended, data } = frame;
    const { outstanding } = this;
    if (outstanding === undefined || addressRole(id, extended) !== 'reply') return;
    const unit = { id, extended };
    if (outstanding.unit !== undefined && keyOf(outstanding.unit) !== keyOf(unit)) return;
    let assembler = this.assemblers.get(keyOf(unit));
    if (assembler === undefined) {
      assembler = new MessageAssembler();
      this.assemblers.set(keyOf(unit), assembler);
    }
    this.scratch.id = id;
    this.scratch.extended = extended;
    this.scratch.length = data.length;
    this.scratch.data.set(data);
    const message = assembler.take(this.scratch)?.slice();
    if (assembler.isAssembling && data[0]! >> 4 === 1) {
      this.sendFrame({ id: requestId(id, extended), extended, data: continueFrame() });
      this.extend(P2_MS + LINE_MS);
    }
    if (message === undefined) return;
    const isNegative = message[0] === 0x7f && message[1] === outstanding.service;
    if (isNegative && message[2] === RESPONSE_PENDING) {
      this.extend(P2_EXTENDED_MS);
      return;
    }
    // An answer to something else: another tester is at work, or a late one.
    if (!isNegative && message[0] !== outstanding.service + 0x40) return;
    outstanding.replies.push({ unit, message });
    if (outstanding.unit !== undefined) this.finish();
  }

  private extend(ms: number): void {
    if (this.outstanding === undefined) return;
    clearTimeout(this.outstanding.timer);
    this.outstanding.timer = this.timeOut(ms);
  }
}
