import { z } from 'zod';
import { carSchema } from './car.ts';

/**
 * JSON Schema of the car file, as published in docs/schemas/car.schema.json.
 *
 * Valid: JSON Schema draft 2020-12.
 * Source: the format itself, src/system/car.ts.
 * @returns the schema as plain data
 */
export function carJsonSchema(): Record<string, unknown> {
  return { $id: 'car.schema.json', title: 'Car', ...z.toJSONSchema(carSchema) };
}
