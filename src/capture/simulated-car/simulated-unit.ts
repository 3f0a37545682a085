/** One control unit behind an ISO 15765 server. */
import { addressRole, requestId } from '../../recording/bus/address.ts';
import { emptyFrame } from '../../recording/bus/frame.ts';
import { MessageAssembler, readFlowControl } from '../../recording/bus/iso-tp.ts';
import { segmentMessage } from '../../recording/bus/segment-message.ts';
import type { BusFrame } from '../frame-port.ts';
import { answer } from './answer.ts';
import { BusLine } from './bus-line.ts';
import type { CarState } from './car-state.ts';

export interface UnitSettings {
  /** Identifier of its replies. */
  readonly id: number;
  readonly extended: boolean;
  /** From request to answer, s. */
  readonly thinksS: number;
}

export class SimulatedUnit {
  /** Whole messages that went out on the wire. */
  readonly sent: { readonly service: number; readonly items: number }[] = [];
  private readonly car: CarState;
  private readonly settings: UnitSettings;
  private readonly line: BusLine;
  private readonly startedS: number;
  private readonly assembler = new MessageAssembler();
  private readonly scratch = emptyFrame();
  private waiting: Uint8Array[] = [];

  constructor(car: CarState, settings: UnitSettings, line: BusLine, startS = 0) {
    this.startedS = BusLine.now() - startS;
    this.car = car;
    this.settings = settings;
    this.line = line;
  }

  /** A frame of the tester that is through at a time. */
  take(frame: BusFrame, throughS: number): void {
    const { id, extended, data } = frame;
    const role = addressRole(id, extended);
    const isMine = id === requestId(this.settings.id, this.settings.extended) && extended === this.settings.extended;
    if (!isMine && (role !== 'functional-request' || extended !== this.settings.extended)) return;
    if (data[0]! >> 4 === 3) {
      if (isMine) this.goOn(data, throughS);
      return;
    }
    const { scratch } = this;
    scratch.length = data.length;
    scratch.data.set(data);
    const request = this.assembler.take(scratch);
    if (request === undefined) return;
    this.waiting = [];
    const message = answer(this.car, request, role === 'functional-request', BusLine.now() - this.startedS);
    if (message === undefined) return;
    const [first, ...rest] = segmentMessage(Uint8Array.from(message));
    this.waiting = rest;
    this.send(first!, throughS + this.settings.thinksS);
  }

  private goOn(data: Uint8Array, throughS: number): void {
    const { status, blockSize, separationS } = readFlowControl(data);
    if (status === 'wait') return;
    const batch =
      status === 'continue' ? this.waiting.splice(0, blockSize === 0 ? this.waiting.length : blockSize) : [];
    if (status !== 'continue') this.waiting = [];
    let atS = throughS;
    for (const each of batch) {
      this.send(each, atS);
      atS += separationS;
    }
  }

  private send(data: Uint8Array, notBeforeS: number): void {
    this.line.send({ id: this.settings.id, extended: this.settings.extended, data }, notBeforeS);
  }
}
