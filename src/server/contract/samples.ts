/**
 * A recording's samples as bytes, so that a million of them open at once.
 *
 * Layout, little-endian: 4 bytes "VWS1"; uint32 length of the head; the head, JSON in UTF-8, padded with spaces so
 * that the data starts at a multiple of 8; then each column at its `offset` from the start of the data: time as
 * float64 (seconds from the first sample), channels as float32 in SI units; an absent sample is NaN.
 */
import { z } from 'zod';
import { CHANNELS, type ChannelName, type Recording } from '../../recording/recording.ts';
import { phaseKindSchema, procedureSchema } from '../../report/finding-format.ts';

const MAGIC = 0x31535756; // "VWS1"
const PREFIX_BYTES = 8;

const CHANNEL_NAMES = Object.keys(CHANNELS) as [ChannelName, ...ChannelName[]];
const phasesSchema = z.array(z.strictObject({ kind: phaseKindSchema, fromS: z.number(), toS: z.number() })).readonly();

export const samplesHeadSchema = z.strictObject({
  schema: z.literal('vaporwright-samples-1'),
  label: z.string(),
  samples: z.int().nonnegative(),
  columns: z
    .array(
      z.strictObject({
        name: z.enum(['timeS', ...CHANNEL_NAMES]),
        type: z.enum(['f64', 'f32']),
        offset: z.int().nonnegative().describe('Bytes from the start of the data'),
      }),
    )
    .readonly(),
  procedure: procedureSchema.describe('In use: given by hand, or found'),
  phases: phasesSchema.describe('In use: corrected by hand where that was done'),
  foundPhases: phasesSchema,
  quality: z.array(z.string()).readonly(),
  warnings: z.array(z.string()).readonly(),
});
export type SamplesHead = z.infer<typeof samplesHeadSchema>;
export type SamplesFacts = Omit<SamplesHead, 'schema' | 'samples' | 'columns'>;

export interface Samples {
  readonly head: SamplesHead;
  readonly timeS: Float64Array;
  readonly channels: Readonly<Partial<Record<ChannelName, Float32Array>>>;
}

const padded = (bytes: number): number => Math.ceil(bytes / 8) * 8;

/** The bytes before the data. */
export function writeSamplesHead(head: SamplesHead): Uint8Array {
  const text = new TextEncoder().encode(JSON.stringify(head));
  const headBytes = padded(text.length);
  const bytes = new Uint8Array(PREFIX_BYTES + headBytes);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, MAGIC, true);
  view.setUint32(4, headBytes, true);
  bytes.fill(0x20, PREFIX_BYTES);
  bytes.set(text, PREFIX_BYTES);
  return bytes;
}

type ReadBytes = (from: number, length: number) => Promise<Uint8Array>;

/** Reads the head alone, from wherever the bytes lie. */
export async function readSamplesHead(
  read: ReadBytes,
): Promise<{ readonly head: SamplesHead; readonly dataStart: number }> {
  const headBytes = headLength(await read(0, PREFIX_BYTES));
  return {
    head: samplesHeadSchema.parse(JSON.parse(new TextDecoder().decode(await read(PREFIX_BYTES, headBytes)))),
    dataStart: PREFIX_BYTES + headBytes,
  };
}

function headLength(prefix: Uint8Array): number {
  const view = new DataView(prefix.buffer, prefix.byteOffset, prefix.byteLength);
  if (prefix.byteLength < PREFIX_BYTES || view.getUint32(0, true) !== MAGIC) {
    throw new Error('These bytes are no samples of a recording: they do not begin with "VWS1".');
  }
  return view.getUint32(4, true);
}

export function encodeSamples(
  { timeS, channels }: Pick<Recording, 'timeS' | 'channels'>,
  facts: SamplesFacts,
): Uint8Array {
  const names = CHANNEL_NAMES.filter((name) => channels[name] !== undefined);
  const columns: SamplesHead['columns'][number][] = [{ name: 'timeS', type: 'f64', offset: 0 }];
  let dataBytes = timeS.length * 8;
  for (const name of names) {
    columns.push({ name, type: 'f32', offset: dataBytes });
    dataBytes = padded(dataBytes + timeS.length * 4);
  }
  const front = writeSamplesHead({ schema: 'vaporwright-samples-1', samples: timeS.length, columns, ...facts });
  const bytes = new Uint8Array(front.length + dataBytes);
  bytes.set(front);
  new Float64Array(bytes.buffer, front.length, timeS.length).set(timeS);
  columns.slice(1).forEach(({ name, offset }) => {
    const values = channels[name as ChannelName];
    if (values !== undefined) new Float32Array(bytes.buffer, front.length + offset, timeS.length).set(values);
  });
  return bytes;
}

/** The columns are views of the given bytes: nothing is copied. */
export function decodeSamples(buffer: ArrayBuffer): Samples {
  const headBytes = headLength(new Uint8Array(buffer, 0, Math.min(PREFIX_BYTES, buffer.byteLength)));
  const text = new TextDecoder().decode(new Uint8Array(buffer, PREFIX_BYTES, headBytes));
  const head = samplesHeadSchema.parse(JSON.parse(text));
  const start = PREFIX_BYTES + headBytes;
  const channels: Partial<Record<ChannelName, Float32Array>> = {};
  let timeS = new Float64Array(0);
  for (const { name, offset } of head.columns) {
    if (name === 'timeS') timeS = new Float64Array(buffer, start + offset, head.samples);
    else channels[name] = new Float32Array(buffer, start + offset, head.samples);
  }
  return { head, timeS, channels };
}
