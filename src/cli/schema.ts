/** `schema`: prints a published format, or the list of them. */
import { EXIT } from './exit-codes.ts';
import { Failure } from './failure.ts';
import { FORMATS, jsonSchemaOf } from './formats.ts';
import { printJson, printText } from './output.ts';

export function schemaCommand(name: string | undefined, { json }: { readonly json?: boolean } = {}): void {
  const names = Object.keys(FORMATS);
  if (name === undefined) {
    if (json === true) printJson({ schema: 'vaporwright-schema-result-1', formats: names });
    else printText(names.join('\n'));
    return;
  }
  const schema = jsonSchemaOf(name);
  if (schema === undefined) {
    throw new Failure(EXIT.usage, `there is no format "${name}"`, {
      found: name,
      expected: `one of ${names.join(', ')}`,
    });
  }
  if (json === true) printJson(schema);
  else printText(JSON.stringify(schema, null, 2));
}
