/** What a job holds of the car's monitor and inspection: its own word, the conditions, and what a drive plan is made from. */
import { z } from 'zod';
import { conditionsSchema } from '../../readiness/conditions.ts';
import { carStatusSchema, codeStatusSchema, testResultSchema } from '../../recording/bus/capture-format.ts';

const moment = z.iso.datetime().describe('UTC');
const text = (most: number) => z.string().max(most);

export const monitorReadingSchema = z
  .strictObject({
    id: z.uuid(),
    at: moment.describe('When the car was read; UTC'),
    by: text(120),
    source: z.enum(['capture', 'by-hand']),
    fileName: text(255).exactOptional().describe('Of the capture'),
    recordingId: z.uuid().exactOptional().describe('The job’s recording that it came with'),
    taken: z.enum(['before-repair', 'after-repair']),
    status: carStatusSchema,
    codes: z.array(z.strictObject({ code: text(8), status: codeStatusSchema })).max(128),
    codesRead: z.array(codeStatusSchema).max(3).describe('Lists that were asked for and given, empty or not'),
    results: z.array(testResultSchema).max(64).describe('Service $06, evaporative monitors only'),
  })
  .describe('What the car said of itself');

export const routineDriveSchema = z.strictObject({
  hour: z.int().min(0).max(23),
  minute: z.int().min(0).max(59),
  lengthS: z.number().positive(),
  weekdays: z.array(z.int().min(0).max(6)).max(7).exactOptional().describe('0 = Sunday; absent: every day'),
});

export const drivePlanInputsSchema = z.strictObject({
  forecast: z
    .strictObject({
      text: text(20_000).describe('One hour a line, as typed or pasted'),
      unit: z.enum(['C', 'F']).describe('Of numbers without one'),
      typedAt: moment.describe('From when hours without a date are counted; UTC'),
      zone: text(60).describe('IANA name of the time zone'),
    })
    .exactOptional(),
  fuelLevel: z.number().min(0).max(1).exactOptional().describe('fraction of the tank'),
  stoppedAt: moment.exactOptional().describe('When the engine was last stopped; UTC'),
  routine: z.array(routineDriveSchema).max(12).describe('Drives that the owner makes anyway'),
  garageK: z.number().positive().exactOptional().describe('Where it is parked, when that is not outdoors'),
  inspectionAt: moment.exactOptional().describe('The inspection; UTC'),
});

export const monitorSchema = z.strictObject({
  readings: z.array(monitorReadingSchema).max(40).describe('In the order in which they were taken in'),
  conditions: conditionsSchema.nullable().describe('null: those that are typical of the layout'),
  parkedBeforeS: z
    .record(z.uuid(), z.number().nonnegative())
    .describe('How long the car stood before a recording began, by the recording'),
  plan: drivePlanInputsSchema,
  engineOff: z
    .strictObject({
      ambientFromK: z.number().positive().exactOptional(),
      ambientToK: z.number().positive().exactOptional(),
      fuelTemperatureK: z.number().positive().exactOptional(),
    })
    .exactOptional()
    .describe('Typed over what follows from the forecast'),
  ruleId: text(120).exactOptional().describe('Inspection rule; absent: the shop’s'),
});
export type Monitor = z.infer<typeof monitorSchema>;
export type MonitorReading = z.infer<typeof monitorReadingSchema>;

export const EMPTY_MONITOR: Monitor = { readings: [], conditions: null, parkedBeforeS: {}, plan: { routine: [] } };
