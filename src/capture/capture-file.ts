/**
 * The file of a live capture: candump log text that only ever grows. Every batch of frames is handed to the system before the
 * program goes on, so that the end of the program loses none of it; once a second it is also forced to the disk.
 */
import {
  closeSync,
  existsSync,
  fdatasync,
  fdatasyncSync,
  fstatSync,
  mkdirSync,
  openSync,
  readSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { idInWords } from '../recording/bus/address.ts';
import { hexText } from '../recording/bus/hex.ts';
import { BUS_OFF, RESTARTED } from '../recording/bus/read-capture.ts';
import type { BusFrame } from './frame-port.ts';

const SYNC_EVERY_MS = 1000;
const TAIL_BYTES = 4096;
const ERROR_FLAG = 0x20000000;

const stampText = (timeS: number): string => `(${timeS.toFixed(6).padStart(17, '0')})`;

export class CaptureFile {
  readonly path: string;
  /** Size so far. */
  bytes = 0;
  private readonly descriptor: number;
  private readonly timer: NodeJS.Timeout;
  private isDirty = false;
  private isSyncing = false;

  constructor(path: string) {
    this.path = path;
    mkdirSync(dirname(path), { recursive: true });
    const lastS = existsSync(path) ? mendTail(path) : undefined;
    this.descriptor = openSync(path, 'a', 0o600);
    this.bytes = fstatSync(this.descriptor).size;
    // Between the end of the earlier talk and now there is nothing.
    if (lastS !== undefined) this.mark(BUS_OFF, lastS);
    this.timer = setInterval(() => this.sync(), SYNC_EVERY_MS);
    this.timer.unref();
  }

  write(frames: readonly BusFrame[], timeS: number): void {
    let text = '';
    for (const { id, extended, data } of frames)
      text += `${stampText(timeS)} can0 ${idInWords(id, extended)}#${hexText(data)}\n`;
    this.append(text);
  }

  /** The adapter is gone, as an error frame that other programs know too. */
  pauseBegins(timeS: number): void {
    this.mark(BUS_OFF, timeS);
  }

  pauseEnds(timeS: number): void {
    this.mark(RESTARTED, timeS);
  }

  /** What was written is on the disk then. */
  close(): void {
    clearInterval(this.timer);
    fdatasyncSync(this.descriptor);
    closeSync(this.descriptor);
  }

  private mark(bits: number, timeS: number): void {
    this.append(`${stampText(timeS)} can0 ${(ERROR_FLAG | bits).toString(16)}#0000000000000000\n`);
  }

  private append(text: string): void {
    const bytes = Buffer.from(text, 'latin1');
    for (let at = 0; at < bytes.length; ) at += writeSync(this.descriptor, bytes, at);
    this.bytes += bytes.length;
    this.isDirty = true;
  }

  private sync(): void {
    if (!this.isDirty || this.isSyncing) return;
    this.isDirty = false;
    this.isSyncing = true;
    fdatasync(this.descriptor, () => {
      this.isSyncing = false;
    });
  }
}

/** Ends a last line that was cut off; gives the last stamp of the file. */
function mendTail(path: string): number | undefined {
  const descriptor = openSync(path, 'r+');
  try {
    const { size } = fstatSync(descriptor);
    if (size === 0) return undefined;
    const tail = Buffer.alloc(Math.min(size, TAIL_BYTES));
    readSync(descriptor, tail, 0, tail.length, size - tail.length);
    if (tail.at(-1) !== 10) writeSync(descriptor, '\n', size);
    const stamps = [...tail.toString('latin1').matchAll(/^\((\d+\.\d{6})\) /gm)];
    const last = stamps.at(-1)?.[1];
    return last === undefined ? undefined : Number(last);
  } finally {
    closeSync(descriptor);
  }
}
