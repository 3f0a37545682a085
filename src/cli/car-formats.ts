/** What "readiness --json" and "capture --json" print. */
import { z } from 'zod';
import { conditionSchema, conditionsSchema } from '../readiness/conditions.ts';
import {
  carStatusSchema,
  codeStatusSchema,
  freezeFrameSchema,
  readCodeSchema,
  testResultSchema,
} from '../recording/bus/capture-format.ts';
import { MONITORS } from '../recording/bus/monitor-status.ts';
import { CHANNELS } from '../recording/recording.ts';

const count = z.number().int().nonnegative();
const words = z.string().describe('English, metric');
const probability = z.number().min(0).max(1);

const conditionResultSchema = z.object({
  condition: conditionSchema,
  outcome: z.enum(['met', 'blocked', 'unknown']),
  atS: z.number().exactOptional().describe('Time on the recording’s clock at which it was met or blocked'),
  words: words.describe('What was found and what was wanted, with figures'),
});

const attemptSchema = z.object({
  file: z.string(),
  attempt: z.object({
    startS: z.number(),
    stopS: z.number(),
    endS: z.number(),
    parkedBefore: z.object({ seconds: z.number(), atLeast: z.boolean() }).exactOptional(),
    startUnseen: z.boolean().describe('The recording began with the engine running'),
    endedByStart: z.boolean(),
  }),
  verdict: z.enum(['blocked', 'conditions-met', 'unknown']),
  blocker: conditionResultSchema.exactOptional().describe('The condition that blocked first'),
  results: z.array(conditionResultSchema),
});

const inspectionSchema = z.object({
  rule: z.string().describe('Id of the rule'),
  verdict: z.enum(['pass', 'fail', 'reject', 'no-test', 'cannot-tell']),
  incomplete: z.array(z.enum(MONITORS)),
  allowed: count.exactOptional(),
  reasons: z.array(words),
  missing: z.array(words).describe('What was not read and is needed'),
});

const planSchema = z.object({
  attempts: z.array(
    z.object({
      startMs: z.number().describe('Milliseconds since 1970'),
      date: z.iso.date(),
      clock: z.string(),
      parkedBeforeS: z.number(),
      temperatureK: z.number(),
      probability: probability.describe('That this attempt runs the monitor to its end'),
      cumulative: probability.describe('That it has run by then'),
      stopMs: z.number().describe('End of the drive'),
      parkedAfterS: z.number(),
      notes: z.array(words),
    }),
  ),
  pattern: z.array(words).describe('How to drive'),
  probability,
  remarks: z.array(words),
  avoid: z.array(words),
});

const outlookSchema = z.object({
  conclusive: z.boolean(),
  because: z.enum(['told-apart', 'hole-passes', 'too-little']),
  peaks: z.array(z.object({ holeM: z.number(), highestGaugePa: z.number(), lowestGaugePa: z.number() })),
  passHighGaugePa: z.number(),
  passLowGaugePa: z.number(),
  words,
});

export const readinessResultSchema = z
  .object({
    schema: z.literal('vaporwright-readiness-1'),
    conditions: conditionsSchema,
    status: carStatusSchema.nullable().describe('Of the last capture that tells it'),
    codes: z.array(readCodeSchema),
    codesRead: z.array(codeStatusSchema).describe('Lists that were asked for'),
    attempts: z.array(attemptSchema),
    inspection: inspectionSchema.nullable().describe('null without a capture and a model year'),
    slip: z.array(z.object({ what: z.string(), value: z.string() })).nullable(),
    plan: planSchema.nullable().describe('null without a forecast'),
    outlook: outlookSchema.nullable().describe('Engine-off test after the first planned drive'),
    caution: z.string(),
  })
  .describe('What "readiness --json" prints');

const skipped = z.array(
  z.object({ reason: z.string(), count, firstLines: z.array(count), example: z.string().optional() }),
);

const captureReportSchema = z.object({
  fileName: z.string(),
  bytes: count,
  lines: count,
  frames: count,
  diagnosticFrames: count,
  requests: count,
  skipped,
  stamps: z.string().describe('What the time stamps mean'),
  firstTimeS: z.number().optional(),
  pauses: z.array(z.object({ fromS: z.number(), toS: z.number() })),
  items: z.array(
    z.object({
      id: count,
      name: z.string(),
      unit: z.string(),
      samples: count,
      channel: z.enum(Object.keys(CHANNELS) as [keyof typeof CHANNELS, ...(keyof typeof CHANNELS)[]]).optional(),
    }),
  ),
  backwardSamples: count,
  samplesBeyondLimit: count,
  largestShiftS: z.number(),
  mergedSamples: count,
  warnings: z.array(z.string()),
});

export const captureResultSchema = z
  .object({
    schema: z.literal('vaporwright-capture-1'),
    file: z.string().describe('Where the frames were written'),
    cleared: z.boolean().describe('The car said that it has cleared its codes'),
    reconnections: count,
    status: carStatusSchema,
    codes: z.array(readCodeSchema),
    codesRead: z.array(codeStatusSchema),
    results: z.array(testResultSchema),
    freezeFrames: z.array(freezeFrameSchema),
    report: captureReportSchema,
  })
  .describe('What "capture --json" prints');
