/** Frames over a line to an adapter that speaks slcan. */
import type { BusFrame, BytePort, FramePort } from './frame-port.ts';
import { BIT_RATE_COMMANDS, encodeSlcan, SlcanDecoder } from './slcan-codec.ts';

export interface SlcanCounts {
  refused: number;
  damaged: number;
}

const encoder = new TextEncoder();

export class SlcanPort implements FramePort {
  readonly name: string;
  readonly counts: SlcanCounts = { refused: 0, damaged: 0 };
  onFrames: (frames: readonly BusFrame[]) => void = () => {};
  onClosed: (reason: string) => void = () => {};
  private readonly port: BytePort;

  constructor(port: BytePort, name: string, bitRate: number) {
    this.port = port;
    this.name = name;
    const decoder = new SlcanDecoder();
    port.onBytes = (bytes) => {
      const frames: BusFrame[] = [];
      for (const event of decoder.push(bytes))
        if (event.kind === 'frame') frames.push(event.frame);
        else if (event.kind === 'refused') this.counts.refused++;
        else if (event.kind === 'damaged') this.counts.damaged++;
      if (frames.length > 0) this.onFrames(frames);
    };
    port.onClosed = (reason) => this.onClosed(reason);
    // What an adapter may still hold of an earlier talk is ended by an empty line; then closed, rate, open.
    this.line('');
    this.line('C');
    this.line(BIT_RATE_COMMANDS[bitRate] ?? 'S6');
    this.line('O');
  }

  send(frame: BusFrame): void {
    this.port.write(encoder.encode(encodeSlcan(frame)));
  }

  close(): void {
    this.line('C');
    this.port.close();
  }

  private line(text: string): void {
    this.port.write(encoder.encode(`${text}\r`));
  }
}
