/** What a bus capture said, as plain data that is kept or handed out: the shapes of `capture-reading.ts`, checked. */
import { z } from 'zod';
import { MONITORS } from './monitor-status.ts';
import { CODE_STATUS, type CodeStatus } from './trouble-codes.ts';
import { COUNTER_NAMES } from './vehicle-information.ts';

const text = z.string().max(200);
const count = z.int().nonnegative();
const CODE_STATUSES = Object.values(CODE_STATUS) as [CodeStatus, ...CodeStatus[]];

export const codeStatusSchema = z.enum(CODE_STATUSES);

export const monitorStatusSchema = z.strictObject({
  scope: z.enum(['since-clear', 'this-drive-cycle']),
  lampOn: z.boolean().exactOptional().describe('Commanded'),
  codeCount: count.exactOptional(),
  ignition: z.enum(['spark', 'compression']),
  monitors: z
    .array(z.strictObject({ name: z.enum(MONITORS), supported: z.boolean(), complete: z.boolean() }))
    .max(32)
    .readonly()
    .describe('Empty for compression ignition'),
});

export const carStatusSchema = z
  .strictObject({
    sinceClear: monitorStatusSchema.exactOptional().describe('Service $01 item $01'),
    thisDrive: monitorStatusSchema.exactOptional().describe('Item $41'),
    warmUpsSinceClear: count.exactOptional().describe('Item $30; 255: as many or more'),
    distanceSinceClearM: z.number().nonnegative().exactOptional().describe('Item $31'),
    distanceWithLampM: z.number().nonnegative().exactOptional().describe('Item $21'),
    timeWithLampS: z.number().nonnegative().exactOptional().describe('Item $4D'),
    timeSinceClearS: z.number().nonnegative().exactOptional().describe('Item $4E'),
    inUse: z.partialRecord(z.enum(COUNTER_NAMES), count).exactOptional().describe('Service $09 type $08'),
    vin: text.exactOptional(),
  })
  .describe('How the readiness of a car stands by its own word; absent what it was not asked for');

export const testResultSchema = z
  .strictObject({
    monitorId: count,
    monitor: text.exactOptional(),
    testId: count,
    scalingId: count,
    unit: text,
    value: z.number(),
    lowest: z.number(),
    highest: z.number(),
    passed: z.boolean(),
  })
  .describe('One result of service $06 with its limits, all on one scale');

export const freezeFrameSchema = z.strictObject({
  unit: text,
  number: count,
  code: text.exactOptional(),
  items: z.array(z.strictObject({ id: count, name: text, value: z.number(), unit: text })).readonly(),
});

export const readCodeSchema = z.strictObject({
  code: text,
  status: codeStatusSchema,
  unit: text.describe('Identifier that the unit replies under, as 7E8'),
});
