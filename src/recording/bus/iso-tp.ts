import type { CanFrame } from './frame.ts';

/** What can go wrong with the frames of a message. A message with any of these is left out, but for a repetition. */
export const TRANSPORT_ANOMALIES = {
  lost: 'consecutive frames are missing: the sequence jumps',
  repeated: 'a consecutive frame came twice; the second was ignored',
  'out-of-order': 'a consecutive frame came after a later one',
  orphan: 'a consecutive frame without a first frame',
  interrupted: 'a new message or request began before this one was complete',
  'timed-out': 'the next consecutive frame did not come in time',
  'wrong-length': 'a length that the frame cannot carry',
  'unknown-kind': 'a protocol byte that the standard reserves',
  'refused-by-receiver': 'the receiver had no room and ended the message',
} as const;
export type TransportAnomaly = keyof typeof TRANSPORT_ANOMALIES;
const ANOMALY_NAMES = Object.keys(TRANSPORT_ANOMALIES) as TransportAnomaly[];

export interface TransportCounts {
  single: number;
  first: number;
  consecutive: number;
  flowControl: number;
  messages: number;
  /** Messages that were begun and never completed. */
  incomplete: number;
  anomalies: Record<TransportAnomaly, number>;
}

export const emptyTransportCounts = (): TransportCounts => ({
  single: 0,
  first: 0,
  consecutive: 0,
  flowControl: 0,
  messages: 0,
  incomplete: 0,
  anomalies: Object.fromEntries(ANOMALY_NAMES.map((name) => [name, 0])) as Record<TransportAnomaly, number>,
});

/** Longest wait for the next consecutive frame, s. ISO 15765-4 N_Cr, from memory. */
export const CONSECUTIVE_TIME_OUT_S = 0.15;
/** No message of the services that are read here is longer; a longer one is a damaged length (judgement). */
export const LONGEST_MESSAGE = 4095;

export interface FlowControl {
  readonly status: 'continue' | 'wait' | 'overflow' | 'unknown';
  readonly blockSize: number;
  readonly separationS: number;
}

/** Separation time of a flow control frame: 00..7F ms, F1..F9 100..900 µs, anything else as 7F (ISO 15765-2). */
export function separationTimeS(byte: number): number {
  if (byte <= 0x7f) return byte / 1000;
  return byte >= 0xf1 && byte <= 0xf9 ? (byte - 0xf0) / 10_000 : 0.127;
}

export function readFlowControl(data: Uint8Array): FlowControl {
  const status = (['continue', 'wait', 'overflow'] as const)[data[0]! & 0x0f] ?? 'unknown';
  return { status, blockSize: data[1]!, separationS: separationTimeS(data[2]!) };
}

/**
 * Puts the messages of one sender together (ISO 15765-2). It only listens, so it cannot ask again: what is not whole
 * and in sequence is dropped and counted, never guessed. `take` gives the payload when a frame completes a message; the
 * bytes are valid until the next call.
 */
export class MessageAssembler {
  readonly counts: TransportCounts;
  private buffer = new Uint8Array(256);
  private length = 0;
  private received = 0;
  private nextSequence = 0;
  private isOpen = false;
  private lastTimeS: number | undefined;
  private readonly lastData = new Uint8Array(64);
  private lastLength = 0;
  /** Sequence number that was skipped: when it comes after all, the frames were out of order, not lost. */
  private skippedSequence: number | undefined;
  /** Time of the frame that began the message, s. */
  startedS: number | undefined;

  constructor(counts: TransportCounts = emptyTransportCounts()) {
    this.counts = counts;
  }

  get isAssembling(): boolean {
    return this.isOpen;
  }

  /** The sender's peer speaks: a new request, or flow control, means that what is open is not going on as it was. */
  peerFrame(kind: 'request' | 'flow-control', data: Uint8Array): void {
    if (kind === 'request') {
      if (this.isOpen) this.abandon('interrupted');
      return;
    }
    this.counts.flowControl++;
    const { status } = readFlowControl(data);
    if (!this.isOpen) return;
    if (status === 'overflow') this.abandon('refused-by-receiver');
  }

  take(frame: CanFrame): Uint8Array | undefined {
    const { data, length } = frame;
    if (length === 0) return this.fault('wrong-length');
    switch (data[0]! >> 4) {
      case 0:
        return this.single(frame);
      case 1:
        return this.first(frame);
      case 2:
        return this.consecutive(frame);
      case 3:
        // A sender's own flow control: it receives something long; that is nothing of this message.
        this.counts.flowControl++;
        return undefined;
      default:
        return this.fault('unknown-kind');
    }
  }

  /** The capture ends, or there is a pause in it. */
  end(): void {
    if (this.isOpen) this.abandon('timed-out');
  }

  private fault(anomaly: TransportAnomaly): undefined {
    this.counts.anomalies[anomaly]++;
    return undefined;
  }

  private abandon(anomaly: TransportAnomaly): undefined {
    this.isOpen = false;
    this.counts.incomplete++;
    return this.fault(anomaly);
  }

  private single(frame: CanFrame): Uint8Array | undefined {
    const { data, length } = frame;
    let size = data[0]! & 0x0f;
    let from = 1;
    if (size === 0 && frame.fd && length > 8) {
      size = data[1]!;
      from = 2;
    } else if (size > 7) return this.fault('wrong-length');
    if (size === 0 || from + size > length) return this.fault('wrong-length');
    if (this.isOpen) this.abandon('interrupted');
    this.counts.single++;
    this.counts.messages++;
    this.startedS = frame.timeS;
    return data.subarray(from, from + size);
  }

  private first(frame: CanFrame): undefined {
    const { data, length } = frame;
    let size = ((data[0]! & 0x0f) << 8) | data[1]!;
    let from = 2;
    if (length < 8) return this.fault('wrong-length');
    if (size === 0) {
      size = ((data[2]! << 24) | (data[3]! << 16) | (data[4]! << 8) | data[5]!) >>> 0;
      from = 6;
      if (size <= LONGEST_MESSAGE) return this.fault('wrong-length');
    }
    if (this.isOpen) this.abandon('interrupted');
    // A message that would fit a single frame may not come in several.
    if (size > LONGEST_MESSAGE || size <= (frame.fd && length > 8 ? length - 2 : 7)) return this.fault('wrong-length');
    this.counts.first++;
    if (this.buffer.length < size) this.buffer = new Uint8Array(size);
    this.buffer.set(data.subarray(from, length));
    this.length = size;
    this.received = length - from;
    this.nextSequence = 1;
    this.isOpen = true;
    this.lastTimeS = frame.timeS;
    this.startedS = frame.timeS;
    this.lastLength = 0;
    this.skippedSequence = undefined;
    return undefined;
  }

  private consecutive(frame: CanFrame): Uint8Array | undefined {
    this.counts.consecutive++;
    const { timeS, data, length } = frame;
    if (!this.isOpen) {
      const isLate = this.skippedSequence === (data[0]! & 0x0f);
      this.skippedSequence = undefined;
      return this.fault(isLate ? 'out-of-order' : 'orphan');
    }
    if (timeS !== undefined && this.lastTimeS !== undefined) {
      if (timeS - this.lastTimeS > CONSECUTIVE_TIME_OUT_S) return this.abandon('timed-out');
      // Sent before the first frame came: it belongs to an earlier message.
      if (timeS < this.lastTimeS) return this.abandon('out-of-order');
    }
    const sequence = data[0]! & 0x0f;
    if (sequence !== this.nextSequence) {
      if (this.isRepetition(frame)) return this.fault('repeated');
      this.skippedSequence = this.nextSequence;
      return this.abandon('lost');
    }
    const wanted = Math.min(length - 1, this.length - this.received);
    // All but the last consecutive frame are full.
    if (this.received + wanted < this.length && length < 8) return this.abandon('wrong-length');
    this.buffer.set(data.subarray(1, 1 + wanted), this.received);
    this.received += wanted;
    this.lastTimeS = timeS;
    this.lastData.set(data.subarray(0, length));
    this.lastLength = length;
    this.nextSequence = (this.nextSequence + 1) & 0x0f;
    if (this.received < this.length) return undefined;
    this.isOpen = false;
    this.counts.messages++;
    return this.buffer.subarray(0, this.length);
  }

  /** The very frame before once more, as some adapters and two interfaces on one bus give it. */
  private isRepetition(frame: CanFrame): boolean {
    if (this.lastLength !== frame.length) return false;
    for (let i = 0; i < frame.length; i++) if (this.lastData[i] !== frame.data[i]) return false;
    return true;
  }
}
