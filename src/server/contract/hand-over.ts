/** The hand-over document: what is asked for and what is given back. */
import { z } from 'zod';

export const LANGUAGES = ['en', 'de'] as const;
export const HAND_OVER_PARTS = ['customer', 'evidence', 'inspection'] as const;

export const unitsSchema = z.strictObject({
  pressure: z.enum(['kPa', 'inH2O', 'mmHg', 'psi']),
  length: z.enum(['mm', 'in']),
  temperature: z.enum(['degC', 'degF']),
});
export type Units = z.infer<typeof unitsSchema>;

export const handOverRequestSchema = z.strictObject({
  language: z.enum(LANGUAGES),
  units: unitsSchema,
  parts: z.array(z.enum(HAND_OVER_PARTS)).min(1),
});
export type HandOverRequest = z.infer<typeof handOverRequestSchema>;

export const handOverParamsSchema = z.object({ id: z.uuid(), hid: z.uuid() });
export const handOverPageQuerySchema = z.object({
  language: z.enum(LANGUAGES).optional(),
  parts: z.enum(HAND_OVER_PARTS).optional().describe('One of them; all when absent'),
  pressure: unitsSchema.shape.pressure.optional(),
  length: unitsSchema.shape.length.optional(),
  temperature: unitsSchema.shape.temperature.optional(),
});
