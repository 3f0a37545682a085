/** Writes docs/schemas from the parsers themselves, so that the published formats are those in use. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { FORMATS, jsonSchemaOf } from '../src/cli/formats.ts';

const folder = fileURLToPath(new URL('../docs/schemas/', import.meta.url));
mkdirSync(folder, { recursive: true });
for (const name of Object.keys(FORMATS)) {
  writeFileSync(`${folder}${name}.schema.json`, `${JSON.stringify(jsonSchemaOf(name), null, 2)}\n`);
}
console.log(`Written: docs/schemas (${Object.keys(FORMATS).join(', ')})`);
