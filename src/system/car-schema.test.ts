import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { carSchema } from './car.ts';
import { carJsonSchema } from './car-schema.ts';

it('is published as it is: docs/schemas/car.schema.json is current (else run npx tsx tools/write-car-schema.ts)', () => {
  const published = readFileSync(new URL('../../docs/schemas/car.schema.json', import.meta.url), 'utf8');
  expect(JSON.parse(published)).toEqual(JSON.parse(JSON.stringify(carJsonSchema())));
});

it('describes every field and refuses unknown ones', () => {
  const schema = carJsonSchema() as { properties: Record<string, unknown>; additionalProperties: boolean };
  expect(Object.keys(schema.properties).sort()).toEqual(Object.keys(carSchema.shape).sort());
  expect(schema.additionalProperties).toBe(false);
});
