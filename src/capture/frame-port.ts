/** One frame as it is sent or came in. */
export interface BusFrame {
  readonly id: number;
  readonly extended: boolean;
  readonly data: Uint8Array;
}

/** Bytes in and out of a line to an adapter. */
export interface BytePort {
  write(bytes: Uint8Array): void;
  close(): void;
  onBytes: (bytes: Uint8Array) => void;
  /** Called once, when the line is gone for whatever reason. */
  onClosed: (reason: string) => void;
}

/** Frames in and out of a bus. */
export interface FramePort {
  readonly name: string;
  send(frame: BusFrame): void;
  close(): void;
  /** `frames` came in together. */
  onFrames: (frames: readonly BusFrame[]) => void;
  onClosed: (reason: string) => void;
}
