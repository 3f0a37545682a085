/**
 * Bus captures: candump text in pieces of bytes, in memory that does not grow with the frames that are no diagnosis.
 */
import { assembleCapture, type CaptureOptions } from './assemble-capture.ts';
import { BusLog } from './bus-log.ts';
import type { StampForm } from './candump-line.ts';
import { CandumpScanner } from './candump-scanner.ts';
import type { CaptureReading } from './capture-reading.ts';
import type { CanFrame } from './frame.ts';
import { CaptureClock, stampMeaning } from './stamps.ts';

/** Diagnostic frames that are looked at before it is decided what the stamps mean. */
const HEAD_FRAMES = 64;
/** Error class bits of linux/can/error.h: the controller is off the bus; it was started again. */
export const BUS_OFF = 0x40;
export const RESTARTED = 0x100;

interface HeldEvent {
  readonly frame?: CanFrame;
  readonly errorBits?: number;
  readonly timeS: number | undefined;
  readonly sumS: number;
}

export class CaptureReader {
  private readonly options: CaptureOptions;
  private readonly log: BusLog;
  private readonly scanner: CandumpScanner;
  private readonly forms = new Set<StampForm>();
  private clock: CaptureClock | undefined;
  private head: HeldEvent[] = [];

  constructor(options: CaptureOptions) {
    this.options = options;
    this.log = new BusLog(options.mostSamples === undefined ? {} : { mostSamples: options.mostSamples });
    this.scanner = new CandumpScanner({
      frame: (frame, stamp, sumS) => {
        if (this.clock !== undefined) this.take(frame, sumS);
        else this.hold({ frame: { ...frame, data: frame.data.slice() }, timeS: frame.timeS, sumS }, stamp);
      },
      errorFrame: (errorBits, timeS, stamp, sumS) => {
        if (this.clock !== undefined) this.takeError(errorBits, timeS, sumS);
        else this.hold({ errorBits, timeS, sumS }, stamp);
      },
    });
  }

  push(piece: Uint8Array): void {
    this.scanner.push(piece);
  }

  finish(): CaptureReading {
    this.scanner.end();
    if (this.clock === undefined) this.decideClock();
    this.log.end();
    return assembleCapture({ log: this.log, clock: this.clock!, counts: this.scanner.counts }, this.options);
  }

  private hold(event: HeldEvent, stamp: StampForm): void {
    this.forms.add(stamp);
    this.head.push(event);
    if (this.head.length >= HEAD_FRAMES) this.decideClock();
  }

  private decideClock(): void {
    this.clock = new CaptureClock(stampMeaning(this.forms, this.scanner.shortStamps, this.scanner.shortFalls));
    for (const { frame, errorBits, timeS, sumS } of this.head)
      if (frame !== undefined) this.take(frame, sumS);
      else this.takeError(errorBits!, timeS, sumS);
    this.head = [];
  }

  private take(frame: CanFrame, sumS: number): void {
    frame.timeS = this.clock!.read(frame.timeS, sumS);
    this.log.take(frame);
  }

  private takeError(bits: number, rawS: number | undefined, sumS: number): void {
    const timeS = this.clock!.read(rawS, sumS);
    if ((bits & BUS_OFF) !== 0) this.log.pauseBegins(timeS);
    if ((bits & RESTARTED) !== 0) this.log.pauseEnds(timeS);
  }
}

/** Reads a whole capture from pieces of its bytes. */
export async function readCapture(
  pieces: AsyncIterable<Uint8Array> | Iterable<Uint8Array>,
  options: CaptureOptions,
): Promise<CaptureReading> {
  const reader = new CaptureReader(options);
  for await (const piece of pieces) reader.push(piece);
  return reader.finish();
}

const LOOKED_AT_BYTES = 16_384;
const MOST_LINES_LOOKED_AT = 50;

/** True when the first bytes of a file are lines of candump text: most lines that are not blank are frames. */
export function looksLikeCapture(firstBytes: Uint8Array): boolean {
  const head = firstBytes.subarray(0, LOOKED_AT_BYTES);
  const last = head.lastIndexOf(10);
  const scanner = new CandumpScanner({ frame: () => {} }, () => false);
  scanner.push(head.subarray(0, last + 1));
  if (last < 0 || scanner.counts.lines === 0) {
    scanner.push(head.subarray(last + 1));
    scanner.end();
  }
  const { frames, skipped, lines } = scanner.counts;
  const other = lines - frames - (skipped.get('blank')?.count ?? 0) - (skipped.get('remark')?.count ?? 0);
  const strange = other - (skipped.get('error-frame')?.count ?? 0) - (skipped.get('remote')?.count ?? 0);
  return frames > 0 && strange * 4 <= Math.min(frames + strange, MOST_LINES_LOOKED_AT);
}

export type { CaptureOptions } from './assemble-capture.ts';
export type { CaptureReading, CarStatus, ReadCode } from './capture-reading.ts';
