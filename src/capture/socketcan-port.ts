/**
 * Linux's own CAN sockets, through can-utils: Node has no such sockets. `candump -L` reads, `canplayer` writes what it is
 * given on its input.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { idInWords } from '../recording/bus/address.ts';
import { CandumpScanner } from '../recording/bus/candump-scanner.ts';
import { hexText } from '../recording/bus/hex.ts';
import type { BusFrame, FramePort } from './frame-port.ts';

export class SocketCanPort implements FramePort {
  readonly name: string;
  onFrames: (frames: readonly BusFrame[]) => void = () => {};
  onClosed: (reason: string) => void = () => {};
  private readonly reader: ChildProcess;
  private readonly writer: ChildProcess;
  private isClosed = false;

  constructor(network: string) {
    this.name = network;
    let frames: BusFrame[] = [];
    const scanner = new CandumpScanner({
      frame: ({ id, extended, data, length }) => void frames.push({ id, extended, data: data.slice(0, length) }),
    });
    this.reader = spawn('candump', ['-L', '-x', network], { stdio: ['ignore', 'pipe', 'ignore'] });
    this.writer = spawn('canplayer', ['-t', '-g', '0', `${network}=${network}`], {
      stdio: ['pipe', 'ignore', 'ignore'],
    });
    this.reader.stdout!.on('data', (piece: Uint8Array) => {
      scanner.push(piece);
      const came = frames;
      frames = [];
      if (came.length > 0) this.onFrames(came);
    });
    for (const [what, child] of [
      ['candump', this.reader],
      ['canplayer', this.writer],
    ] as const) {
      child.on('error', (error) => this.end(`${what} could not be started (${error.message}); install can-utils`));
      child.on('exit', () => this.end(`${what} ended: is the network ${network} up?`));
    }
    this.writer.stdin!.on('error', () => this.end('canplayer no longer takes frames'));
  }

  send({ id, extended, data }: BusFrame): void {
    this.writer.stdin!.write(`(0.000000) ${this.name} ${idInWords(id, extended)}#${hexText(data)}\n`);
  }

  close(): void {
    this.isClosed = true;
    this.reader.kill();
    this.writer.kill();
  }

  private end(reason: string): void {
    if (this.isClosed) return;
    this.close();
    this.onClosed(reason);
  }
}
