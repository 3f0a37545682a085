/** `schema`: prints a published format. */
import { EXIT } from './exit-codes.ts';
import { Failure } from './failure.ts';
import { FORMATS, jsonSchemaOf } from './formats.ts';
import { printText } from './output.ts';

export function schemaCommand(name: string | undefined): void {
  const names = Object.keys(FORMATS);
  if (name === undefined) {
    printText(names.join('\n'));
    return;
  }
  const schema = jsonSchemaOf(name);
  if (schema === undefined) {
    throw new Failure(EXIT.usage, `there is no format "${name}"`, {
      found: name,
      expected: `one of ${names.join(', ')}`,
    });
  }
  printText(JSON.stringify(schema, null, 2));
}
