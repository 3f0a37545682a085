import { z } from 'zod';
import { CHANNELS, type ChannelName } from './recording.ts';

export const DELIMITERS = [',', ';', '\t', '|'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

export const TIME_FORMATS = ['seconds', 'milliseconds', 'minutes', 'hours', 'clock', 'date-time'] as const;
export type TimeFormat = (typeof TIME_FORMATS)[number];

export const DATE_ORDERS = ['year-first', 'day-first', 'month-first'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

const CHANNEL_NAMES = Object.keys(CHANNELS) as [ChannelName, ...ChannelName[]];

const confidence = z.number().min(0).max(1).optional().describe('How sure a guess is, 0..1; absent when given by hand');
const reasons = z.array(z.string()).optional().describe('Why it was guessed so');

const columnSchema = z.strictObject({
  column: z.string().describe('Header of the column; a repeated header gets " (2)", " (3)" behind it'),
  channel: z.enum(CHANNEL_NAMES).nullable().describe('What the column holds; null leaves it out'),
  unit: z.string().optional().describe('Unit of its numbers, as kPa, inH2O, degF, %, V; absent for on/off columns'),
  reference: z.enum(['gauge', 'absolute']).optional().describe('For pressures: what zero means'),
  inverted: z.boolean().optional().describe('For on/off columns: the column says the opposite of the channel'),
  confidence,
  reasons,
});

export const mappingSchema = z
  .strictObject({
    schema: z.literal('vaporwright-mapping-1').describe('Name and version of this format'),
    delimiter: z.enum(DELIMITERS).optional().describe('Between the cells; found when absent'),
    decimal: z.enum(['.', ',']).optional().describe('Decimal mark; found when absent'),
    headerLine: z.int().nonnegative().optional().describe('Line of the header counted from 1; 0: there is none'),
    time: z
      .strictObject({
        columns: z.array(z.string()).min(1).max(2).describe('One column, or a date and a clock column'),
        format: z.enum(TIME_FORMATS),
        dateOrder: z.enum(DATE_ORDERS).optional(),
        confidence,
        reasons,
      })
      .optional()
      .describe('Found when absent'),
    columns: z.array(columnSchema).describe('Columns that are not listed are left out'),
    barometricAbsPa: z.number().positive().optional().describe('Ambient pressure for absolute tank pressures, Pa'),
  })
  .describe('How the columns and units of a CSV recording are read');

export type Mapping = z.infer<typeof mappingSchema>;
export type ColumnMapping = Mapping['columns'][number];
export type TimeMapping = NonNullable<Mapping['time']>;
