/** One frame from a CAN bus. Readers hand out the same object again and again: copy what must be kept. */
export interface CanFrame {
  /** On the capture's own clock; absent when its lines carry no time stamps. */
  timeS: number | undefined;
  /** 11 or 29 bits. */
  id: number;
  extended: boolean;
  /** Flexible data rate: up to 64 bytes. */
  fd: boolean;
  length: number;
  readonly data: Uint8Array;
}

export const LONGEST_DATA = 64;

export const emptyFrame = (): CanFrame => ({
  timeS: undefined,
  id: 0,
  extended: false,
  fd: false,
  length: 0,
  data: new Uint8Array(LONGEST_DATA),
});
