import { LONGEST_MESSAGE } from './iso-tp.ts';

/** Frames of eight bytes are always full on this bus; this byte fills them up (ISO 15765-4 leaves its value open). */
export const PADDING = 0x00;

function padded(bytes: readonly number[]): Uint8Array {
  const frame = new Uint8Array(8).fill(PADDING);
  frame.set(bytes);
  return frame;
}

/** Parts a message into the data of frames (ISO 15765-2): one single frame, or a first frame and consecutive ones. */
export function segmentMessage(message: Uint8Array): Uint8Array[] {
  const { length } = message;
  if (length === 0 || length > LONGEST_MESSAGE)
    throw new Error(`a message of ${length} bytes; expected 1 to ${LONGEST_MESSAGE}`);
  if (length <= 7) return [padded([length, ...message])];
  const frames = [padded([0x10 | (length >> 8), length & 0xff, ...message.subarray(0, 6)])];
  for (let at = 6, sequence = 1; at < length; at += 7, sequence = (sequence + 1) & 0x0f)
    frames.push(padded([0x20 | sequence, ...message.subarray(at, at + 7)]));
  return frames;
}

/** Flow control that lets the sender send all the rest at once. */
export const continueFrame = (): Uint8Array => padded([0x30, 0x00, 0x00]);
