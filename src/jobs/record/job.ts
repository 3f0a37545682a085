/**
 * A job: one car's visit. Plain data, checked once where it comes in; store, server and pages share it.
 *
 * A job consists of sections. A section is what one change replaces as a whole and what undo brings back.
 */
import { z } from 'zod';
import { CAUSES } from '../../diagnosis/finding.ts';
import type { COMPLAINTS } from '../../diagnosis/priors/root-causes.ts';
import { mappingSchema } from '../../recording/mapping.ts';
import { PHASES, PROCEDURES } from '../../recording/recording.ts';
import { storedSheetSchema } from '../../report/sheet.ts';
import { carSchema } from '../../system/car.ts';
import { EMPTY_MONITOR, monitorSchema } from './monitor.ts';

const moment = z.iso.datetime().describe('UTC');
const id = z.uuid();
const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const text = (most: number) => z.string().max(most);

/** What an owner says; `root-causes.ts` names further columns that are codes, not complaints. */
export const COMPLAINT_TYPES = ['slow fill', 'rough after fill', 'smell', 'not ready', 'hiss or collapse'] as const;
const complaintTypeSchema = z.enum(COMPLAINT_TYPES satisfies readonly (typeof COMPLAINTS)[number][]);

export const complaintSchema = z.strictObject({
  words: text(4000).describe("In the customer's own words"),
  types: z.array(complaintTypeSchema).describe('The same as the kinds that the priors know'),
  circumstances: z
    .array(text(80))
    .max(40)
    .exactOptional()
    .describe('What is known of the car’s life and shifts the priors of the planner; absent: nothing was told'),
});

export const codeSchema = z.strictObject({
  code: z
    .string()
    .regex(/^[PCBU][0-3][0-9A-F]{3}$/)
    .describe('Diagnostic trouble code, SAE J2012 form'),
  status: z.enum(['stored', 'pending', 'permanent']),
  freezeFrame: z
    .array(z.strictObject({ name: text(80), value: text(80), unit: text(20).exactOptional() }))
    .exactOptional()
    .describe('Conditions when the code was set, as read'),
});

export const vehicleSchema = z.strictObject({
  name: text(120).describe('What people in the shop call this car'),
  owner: text(200).exactOptional(),
  registration: text(20).exactOptional(),
  vin: z
    .string()
    .regex(/^[A-HJ-NPR-Z0-9]{17}$/)
    .exactOptional(),
  modelYear: z.int().min(1970).max(2100).exactOptional(),
  odometerKm: z.number().nonnegative().exactOptional(),
});

/** How strongly a hand check speaks for or against causes; its likelihood ratio is in `check-weights.ts`. */
export const CHECK_STRENGTHS = ['weak', 'clear', 'strong'] as const;

export const checkResultSchema = z.strictObject({
  id,
  at: moment,
  by: text(120),
  what: text(400).describe('What was done, where'),
  result: text(2000).describe('What was seen or measured, in words'),
  measured: z.strictObject({ value: z.number(), unit: text(20) }).exactOptional(),
  speaksFor: z.array(z.enum(CAUSES)),
  speaksAgainst: z.array(z.enum(CAUSES)),
  strength: z.enum(CHECK_STRENGTHS),
  checkId: z
    .string()
    .regex(/^[TR]\d\d$/)
    .exactOptional()
    .describe('Number of the check in the catalogue; absent: written by hand'),
  answer: z
    .union([
      z.strictObject({ outcome: text(80) }),
      z.strictObject({ numbers: z.record(text(80), text(80)) }).describe('By field, with units as typed'),
    ])
    .exactOptional()
    .describe('What was entered in its form; weighed by the planner, not by the finding'),
});

export const repairSchema = z.strictObject({
  id,
  at: moment,
  by: text(120),
  what: text(2000),
  parts: z.array(
    z.strictObject({
      name: text(200),
      number: text(80).exactOptional(),
      price: z.number().nonnegative().exactOptional(),
    }),
  ),
  minutes: z.number().nonnegative().exactOptional(),
  addresses: z.array(z.enum(CAUSES)).describe('Causes that this repair is meant to remove'),
  repairId: text(60)
    .exactOptional()
    .describe('Name of the repair in the planner’s catalogue; absent: one that it does not know'),
});

export const proofSchema = z.strictObject({
  before: z.array(id).describe('Recordings made before the repair'),
  after: z.array(id).describe('Recordings made after it'),
  verdict: z.enum(['held', 'not-held', 'not-proven']),
  limit: z
    .strictObject({ label: text(400), diameterMm: z.number().positive() })
    .exactOptional()
    .describe('The limit that the numbers were judged against; absent: the first of the shop'),
  words: text(4000).describe('What somebody adds; the figures are worked out from the findings and checks'),
  missing: text(2000).describe('What has not been verified, beside what follows from the figures'),
});

export const noteSchema = z.strictObject({ id, at: moment, by: text(120), text: text(8000) });

const phaseSchema = z.strictObject({ kind: z.enum(PHASES), fromS: z.number(), toS: z.number() });

/** Facts that the technician gives about a recording; see `RecordingNotes` of the recording room. */
export const recordingFactsSchema = z.strictObject({
  procedure: z.enum(PROCEDURES).exactOptional(),
  drawTargetGaugePa: z.number().negative().exactOptional(),
  drawTimeOutS: z.number().positive().exactOptional(),
  fillFlowM3PerS: z.number().positive().exactOptional(),
  shutOffTimesS: z.array(z.number()).exactOptional(),
  filledM3: z.number().positive().exactOptional(),
  ventShutS: z.array(z.strictObject({ fromS: z.number(), toS: z.number().exactOptional() })).exactOptional(),
});

export const recordingEntrySchema = z.strictObject({
  id,
  label: text(200),
  fileName: text(255),
  sha256: sha256.describe('Of the raw file, kept byte for byte'),
  bytes: z.int().nonnegative(),
  receivedAt: moment,
  useInFinding: z.boolean(),
  taken: z.enum(['before-repair', 'after-repair']),
  mapping: mappingSchema.exactOptional().describe('As given by hand; absent: guessed anew from the file'),
  phases: z.array(phaseSchema).exactOptional().describe('As corrected by hand; absent: found'),
  facts: recordingFactsSchema.exactOptional(),
});

export const attachmentSchema = z.strictObject({
  id,
  fileName: text(255),
  mediaType: text(120),
  sha256,
  bytes: z.int().nonnegative(),
  at: moment,
  caption: text(1000),
});

export const jobFindingSchema = z.strictObject({
  id,
  madeAt: moment,
  inputsSha256: sha256.describe('Of everything it was made from; differs from the job’s present inputs when outdated'),
  outdated: z.boolean().describe('Inputs or program have changed since'),
  sheet: storedSheetSchema,
});

export const handOverSchema = z.strictObject({
  id,
  madeAt: moment,
  by: text(120),
  pdfSha256: sha256,
  language: z.enum(['en', 'de']),
});

/** The sections that a change replaces as a whole. */
export const SECTIONS = {
  complaint: complaintSchema,
  codes: z.array(codeSchema).max(64),
  vehicle: vehicleSchema,
  car: carSchema.nullable().describe('null until the technician has chosen a layout'),
  recordings: z
    .array(recordingEntrySchema)
    .max(200)
    .describe('Entries are added by upload; here they are edited or taken out'),
  checks: z.array(checkResultSchema).max(500),
  repairs: z.array(repairSchema).max(200),
  proof: proofSchema.nullable(),
  monitor: monitorSchema.describe('Monitor and inspection'),
  attachments: z.array(attachmentSchema).max(500),
  notes: z.array(noteSchema).max(500),
} as const;
export type SectionName = keyof typeof SECTIONS;
export const SECTION_NAMES = Object.keys(SECTIONS) as readonly SectionName[];

export const WAITING = [
  'complaint',
  'car',
  'recording',
  'finding',
  'check',
  'repair',
  'proof',
  'hand-over',
  'nothing',
] as const;

export const jobSchema = z.strictObject({
  schema: z.literal('vaporwright-job-1').describe('Name and version of this format'),
  id,
  number: z.int().positive().describe('Counts up in the shop; what people say on the telephone'),
  version: z.int().nonnegative().describe('Goes up by one with every change'),
  createdAt: moment,
  changedAt: moment,
  demo: z.boolean().describe('Invented, and removable with all other demo jobs'),
  closed: z.boolean(),
  ...SECTIONS,
  // A job file written before there was such a section has none.
  monitor: SECTIONS.monitor.default(EMPTY_MONITOR),
  findings: z.array(jobFindingSchema).describe('Newest last'),
  handOvers: z.array(handOverSchema).describe('Newest last'),
});
export type Job = z.infer<typeof jobSchema>;
export type Section<Name extends SectionName> = z.infer<(typeof SECTIONS)[Name]>;
export type CheckResult = z.infer<typeof checkResultSchema>;
export type RecordingEntry = z.infer<typeof recordingEntrySchema>;
export type JobFinding = z.infer<typeof jobFindingSchema>;

/** One row of the list of jobs. */
export const jobSummarySchema = z.strictObject({
  id,
  number: z.int().positive(),
  vehicle: text(120),
  registration: text(20).exactOptional(),
  complaint: text(200).describe('First words'),
  codes: z.array(z.string()),
  waitsFor: z.enum(WAITING),
  finding: z
    .strictObject({
      verdict: z.enum(['fault', 'no-fault-seen', 'cannot-tell']),
      cause: z.enum(CAUSES),
      probability: z.number(),
    })
    .nullable(),
  changedAt: moment,
  demo: z.boolean(),
  closed: z.boolean(),
});
export type JobSummary = z.infer<typeof jobSummarySchema>;

export const historyEntrySchema = z.strictObject({
  version: z.int().nonnegative().describe('Version of the job after this change'),
  at: moment,
  by: text(120),
  what: z.enum(['created', 'changed', 'uploaded', 'finding', 'hand-over', 'undone', 'closed', 'reopened', 'imported']),
  section: z.string().nullable(),
  before: z.unknown().describe('The section as it was; absent where nothing was'),
  after: z.unknown(),
  undoes: z.int().nonnegative().exactOptional().describe('The version whose change this entry takes back'),
});
export type HistoryEntry = z.infer<typeof historyEntrySchema>;
