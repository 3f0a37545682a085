/** What the commands print with --json, apart from the finding. */
import { z } from 'zod';
import { mappingSchema } from '../recording/mapping.ts';
import { CHANNELS } from '../recording/recording.ts';
import { verdictSchema } from '../report/finding-format.ts';

const span = z.object({ fromS: z.number(), toS: z.number() });
const count = z.number().int().nonnegative();
const channel = z.enum(Object.keys(CHANNELS) as [keyof typeof CHANNELS, ...(keyof typeof CHANNELS)[]]);

export const readResultSchema = z
  .object({
    schema: z.literal('vaporwright-read-1'),
    file: z.string(),
    sha256: z.string(),
    written: z.string().nullable().describe('Where our own columns were written, if they were'),
    channels: z.array(channel),
    mapping: mappingSchema,
    report: z
      .object({
        fileName: z.string(),
        linesRead: count.describe('samples + the sum of skipped'),
        samples: count,
        skipped: z.array(
          z.object({ reason: z.string(), count, firstLines: z.array(count), example: z.string().optional() }),
        ),
        cells: z.array(
          z.object({
            column: z.string(),
            missing: count,
            unreadable: count,
            firstUnreadableLines: z.array(count),
            example: z.string().optional(),
          }),
        ),
        ignoredColumns: z.array(z.object({ column: z.string(), reasons: z.array(z.string()) })),
        pauses: z.array(span),
        firstTimeS: z.number(),
        warnings: z.array(z.string()),
      })
      .describe('What happened to every line of the file'),
    quality: z.object({
      time: z.object({
        durationS: z.number(),
        samples: count,
        medianIntervalS: z.number().optional(),
        rateHz: z.number().optional(),
        jitterS: z.number().optional(),
        missingSamples: count,
        gaps: z.array(span),
      }),
      channels: z.array(
        z.object({
          channel,
          samples: count,
          missing: count,
          min: z.number().optional(),
          max: z.number().optional(),
          resolution: z.number().optional(),
          noise: z.number().optional(),
          clippedLow: z.number(),
          clippedHigh: z.number(),
          constant: z.boolean(),
          stuck: z.boolean(),
          spikes: count,
        }),
      ),
    }),
  })
  .describe('What "read --json" prints');

export const reportResultSchema = z
  .object({
    schema: z.literal('vaporwright-report-1'),
    verdict: verdictSchema,
    sentence: z.string(),
    files: z.array(z.string()),
  })
  .describe('What "report --json" prints');

export const simulateResultSchema = z
  .object({
    schema: z.literal('vaporwright-simulate-1'),
    label: z.string(),
    samples: count,
    durationS: z.number(),
    steps: z.array(
      z.object({
        phase: z.string(),
        fromS: z.number(),
        toS: z.number(),
        outcome: z.string().optional().describe('What ended the step; absent when it ran its full time'),
      }),
    ),
    airErrorKg: z.number().describe('What the ledger of air misses at the end'),
    fuelErrorKg: z.number().describe('What the ledger of fuel misses at the end'),
    files: z.array(z.string()),
  })
  .describe('What "simulate --json" prints');

export const schemaResultSchema = z
  .object({ schema: z.literal('vaporwright-schema-result-1'), formats: z.array(z.string()) })
  .describe('What "schema --json" prints without a name; with one, the JSON Schema itself');

export const benchResultSchema = z
  .object({
    schema: z.literal('vaporwright-bench-result-1'),
    benchmarks: z
      .array(z.record(z.string(), z.unknown()))
      .describe('The object that each benchmark prints last; docs/benchmarks.md says what it measures'),
  })
  .describe('What "bench --json" prints; the tables go to stderr');

export const errorSchema = z
  .object({
    error: z.object({
      kind: z.enum(['internal', 'usage', 'input', 'output', 'cancelled']),
      message: z.string(),
      file: z.string().optional(),
      line: z.int().positive().optional().describe('Counted from 1'),
      column: z.int().positive().optional().describe('Counted from 1'),
      found: z.string().optional(),
      expected: z.string().optional(),
      advice: z.string().optional().describe('What to do'),
    }),
  })
  .describe('What any command with --json prints on stderr when it fails');
