/**
 * The wire between the simulated car and whoever listens: frames take the time that they take at the bit rate, one after the
 * other, and the car thinks for a while before it answers.
 */
import type { BusFrame } from '../frame-port.ts';

/** Bits of a data frame with the stuff bits that a mean frame has, and the space behind it. From memory (ISO 11898-1). */
const BITS_11 = 47;
const BITS_29 = 67;
const MEAN_STUFFING = 1.08; // judgement
export const frameSeconds = ({ extended, data }: BusFrame, bitRate: number): number =>
  (((extended ? BITS_29 : BITS_11) + 8 * data.length) * MEAN_STUFFING) / bitRate;

/** Timers are late by a millisecond or so; the last stretch is waited for in turns of the event loop. */
const COARSE_S = 0.002;

interface Due {
  readonly atS: number;
  readonly frame: BusFrame;
}

export class BusLine {
  private readonly bitRate: number;
  private readonly deliver: (frame: BusFrame) => void;
  private freeS = 0;
  private readonly queue: Due[] = [];
  private isWaiting = false;

  constructor(bitRate: number, deliver: (frame: BusFrame) => void) {
    this.bitRate = bitRate;
    this.deliver = deliver;
  }

  static now(): number {
    return performance.now() / 1000;
  }

  /** A frame of the tester goes over the wire; gives the time at which it is through. */
  occupy(frame: BusFrame): number {
    this.freeS = Math.max(this.freeS, BusLine.now()) + frameSeconds(frame, this.bitRate);
    return this.freeS;
  }

  /** A frame of the car, not before a time. */
  send(frame: BusFrame, notBeforeS: number): void {
    this.freeS = Math.max(this.freeS, notBeforeS) + frameSeconds(frame, this.bitRate);
    this.queue.push({ atS: this.freeS, frame });
    this.wait();
  }

  clear(): void {
    this.queue.length = 0;
  }

  private wait(): void {
    const [next] = this.queue;
    if (next === undefined || this.isWaiting) return;
    this.isWaiting = true;
    const leftS = next.atS - BusLine.now();
    const go = (): void => {
      this.isWaiting = false;
      this.due();
    };
    if (leftS > COARSE_S) setTimeout(go, (leftS - COARSE_S) * 1000);
    else setImmediate(go);
  }

  private due(): void {
    const now = BusLine.now();
    while (this.queue.length > 0 && this.queue[0]!.atS <= now) this.deliver(this.queue.shift()!.frame);
    this.wait();
  }
}
