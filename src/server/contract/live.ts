/** Requests and answers about recording a car live. Times are seconds from the recording's first row. */
import { z } from 'zod';
import type { GrowingUpdate } from '../../diagnosis/growing/growing-finding.ts';
import { jobSchema } from '../../jobs/record/job.ts';
import { CHANNELS, type ChannelName, type Phase, PROCEDURES, type ShutTime } from '../../recording/recording.ts';
import { LAYOUTS } from '../../system/car.ts';
import { LEAK_PLACES } from '../../system/parameters.ts';
import { captureFactsSchema, TAKEN } from './recordings.ts';

const text = z.string().max(200);
const count = z.int().nonnegative();

export const liveParamsSchema = z.object({ id: z.uuid(), lid: z.uuid() });

export const foundPortSchema = z.strictObject({
  address: text.describe('A serial device, or the name of a CAN network'),
  kind: z.enum(['serial', 'socketcan']),
  words: z.string().exactOptional().describe('What the device says of itself'),
});
export const portsSchema = z.strictObject({
  ports: z.array(foundPortSchema).readonly(),
  hasSerialLibrary: z.boolean().describe('false: serial devices cannot be used on this machine'),
});
export type Ports = z.infer<typeof portsSchema>;

export const simulatedFaultSchema = z.strictObject({
  kind: text.describe('As in the list of faults'),
  place: z.enum(LEAK_PLACES).exactOptional(),
  size: z.number().nonnegative().exactOptional().describe('In the unit of the kind, SI'),
});

const BIT_RATES = [125_000, 250_000, 500_000, 1_000_000] as const;

export const livePortSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('adapter'),
    address: text.describe('A serial device, the name of a CAN network, or tcp://127.0.0.1:PORT'),
    bitRate: z.union(BIT_RATES.map((rate) => z.literal(rate))).exactOptional(),
  }),
  z.strictObject({
    kind: z.literal('simulated'),
    layout: z.enum(LAYOUTS),
    fault: simulatedFaultSchema.exactOptional().describe('Absent: a sound car'),
    startS: z.number().min(0).max(600).exactOptional().describe('Where in its self-test the car begins, s'),
  }),
]);
export type LivePort = z.infer<typeof livePortSchema>;

const procedure = z
  .enum(PROCEDURES)
  .nullable()
  .describe('What is done with the car; the bus does not tell. null: not known, or nothing was commanded');

export const liveStartSchema = z
  .strictObject({ port: livePortSchema, procedure, taken: z.enum(TAKEN).exactOptional() })
  .describe('Begin to record from a car');
export type LiveStart = z.infer<typeof liveStartSchema>;

export const liveChangeSchema = z
  .strictObject({
    procedure: procedure.exactOptional(),
    vent: z
      .enum(['shut', 'open', 'forget'])
      .exactOptional()
      .describe('Marks the vent valve now; or takes all marks out'),
  })
  .describe('What a person says while it runs');
export type LiveChange = z.infer<typeof liveChangeSchema>;

export const liveKeepSchema = z
  .strictObject({
    procedure,
    label: text.exactOptional().describe('What people call the recording'),
    as: z
      .enum(['recording', 'file'])
      .exactOptional()
      .describe('file: among photos and files, for a capture that holds no recording'),
  })
  .describe('Stop, and take what was recorded into the job');
export type LiveKeep = z.infer<typeof liveKeepSchema>;

export const liveKeptSchema = z.strictObject({
  job: jobSchema,
  recordingId: z.uuid().nullable().describe('null: kept among the files'),
});
export type LiveKept = z.infer<typeof liveKeptSchema>;

export const clearRequestSchema = z.strictObject({
  confirm: z.literal('clear').describe('Typed by the person who has read what clearing erases'),
  language: z.enum(['en', 'de']).describe('Of the notes that are written into the job'),
});
export const clearedSchema = z.strictObject({
  cleared: z.boolean().describe('A control unit said that it has cleared its codes'),
  units: z.array(text).readonly().describe('Those that said so'),
  job: jobSchema,
});
export type Cleared = z.infer<typeof clearedSchema>;

export const LIVE_STATES = ['connecting', 'finding', 'reading-status', 'sampling', 'waiting', 'stopped'] as const;

const shutTimeSchema = z.strictObject({ fromS: z.number(), toS: z.number().exactOptional() });

export const liveStatusSchema = z
  .strictObject({
    id: z.uuid(),
    jobId: z.uuid(),
    startedAt: z.iso.datetime(),
    by: text,
    port: livePortSchema,
    state: z.enum(LIVE_STATES),
    problem: z.string().nullable().describe('Why the car is away, or the recording has ended'),
    taken: z.enum(TAKEN),
    procedure,
    samples: count,
    rateHz: z.number().describe('Samples a second over the last seconds'),
    rows: count,
    durationS: z.number(),
    bytes: count.describe('Of the capture so far'),
    channels: z
      .array(
        z.strictObject({
          name: z.enum(Object.keys(CHANNELS) as [ChannelName, ...ChannelName[]]),
          samples: count,
          rateHz: z.number(),
        }),
      )
      .readonly(),
    reconnections: count,
    pauses: z.array(shutTimeSchema).readonly().describe('Without the car; the last has no end while it lasts'),
    ventMarks: z.array(shutTimeSchema).readonly().describe('The vent valve shut, as marked by hand'),
    follows: z
      .enum(['finding', 'no-car', 'failed'])
      .describe('no-car: the layout is not known, so there is no finding'),
    said: captureFactsSchema.nullable().describe('null: not read yet'),
    clearedAt: z.iso.datetime().nullable(),
  })
  .describe('A recording that runs');
export type LiveStatus = z.infer<typeof liveStatusSchema>;

export const leftCaptureSchema = z
  .strictObject({
    id: z.uuid(),
    startedAt: z.iso.datetime(),
    endedAt: z.iso.datetime().describe('When the last of it was written'),
    by: text,
    port: livePortSchema,
    procedure,
    bytes: count,
  })
  .describe('What a recording left that ended with the program, or was not decided on');
export type LeftCapture = z.infer<typeof leftCaptureSchema>;

export const liveOfJobSchema = z.strictObject({
  live: liveStatusSchema.nullable(),
  left: z.array(leftCaptureSchema).readonly(),
});
export type LiveOfJob = z.infer<typeof liveOfJobSchema>;
export const liveAnswerSchema = z.strictObject({ live: liveStatusSchema });

/** Server-sent events of one live recording, each with one JSON object as data. */
export interface LiveEvents {
  readonly status: LiveStatus;
  /** The id of the event is the number of rows up to its end: whoever was away asks for what comes after. */
  readonly rows: LiveRowsEvent;
  readonly follow: LiveFollow;
  readonly over: LiveOver;
}
export interface LiveRowsEvent {
  /** Rows before these. */
  readonly from: number;
  readonly timeS: readonly number[];
  /** null: absent. A channel that is missing here has no sample in these rows. */
  readonly channels: Readonly<Partial<Record<ChannelName, readonly (number | null)[]>>>;
}
export interface LiveFollow {
  readonly phases: readonly Phase[];
  /** As marked, or as a vacuum draw shows it. */
  readonly ventShut: readonly ShutTime[];
  readonly finding: GrowingUpdate | null;
}
export interface LiveOver {
  readonly how: 'kept' | 'discarded' | 'left';
  readonly recordingId: string | null;
}
