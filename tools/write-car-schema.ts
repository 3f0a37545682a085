/** Writes docs/schemas/car.schema.json from the car format: npx tsx tools/write-car-schema.ts */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { carJsonSchema } from '../src/system/car-schema.ts';

const file = fileURLToPath(new URL('../docs/schemas/car.schema.json', import.meta.url));
mkdirSync(fileURLToPath(new URL('../docs/schemas/', import.meta.url)), { recursive: true });
writeFileSync(file, `${JSON.stringify(carJsonSchema(), null, 2)}\n`);
console.log(`wrote ${file}`);
