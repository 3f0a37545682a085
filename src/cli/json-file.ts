/** A JSON file parsed into a type once, with errors that name file, line, column, found and expected. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { z } from 'zod';
import { EXIT } from './exit-codes.ts';
import { cannotRead, Failure } from './failure.ts';
import { type JsonPath, type JsonText, JsonTextError, parseJsonText, placeOf } from './json-text.ts';
import { knownNames } from './known-names.ts';

export interface JsonFile<T> {
  readonly value: T;
  readonly sha256: string;
}

const at = (value: unknown, path: JsonPath): unknown =>
  path.reduce<unknown>(
    (part, key) =>
      typeof part === 'object' && part !== null ? (part as Record<string | number, unknown>)[key] : undefined,
    value,
  );

function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

/** Above this size a file was written by the program itself: places are looked up only when something is wrong. */
const LARGE_CHARS = 1_000_000;

/** Places cost time: for a large file they are worked out only when something is wrong with it. */
function parseLarge(text: string): JsonText {
  try {
    const value: unknown = JSON.parse(text);
    let places: JsonText | undefined;
    return {
      value,
      offsetOf: (path) => {
        places ??= parseJsonText(text);
        return places.offsetOf(path);
      },
    };
  } catch {
    return parseJsonText(text);
  }
}

/** The name that `vaporwright schema` knows a format by. */
const shortName = (formatName: string): string => formatName.replace(/^vaporwright-|-\d+$/g, '');

function parse(text: string, file: string, formatName: string): JsonText {
  try {
    return text.length > LARGE_CHARS ? parseLarge(text) : parseJsonText(text);
  } catch (error) {
    if (!(error instanceof JsonTextError)) throw error;
    throw new Failure(EXIT.input, `${file} is not JSON`, {
      file,
      ...placeOf(text, error.offset),
      found: error.found,
      expected: error.expected,
      advice: `A file in JSON was expected here; its format is printed by: vaporwright schema ${shortName(formatName)}.`,
    });
  }
}

/** A file written by a later version of the program is said to be that, not to be broken. */
function refuseNewer(value: unknown, formatName: string, file: string): void {
  const schema = at(value, ['schema']);
  const family = formatName.replace(/-\d+$/, '');
  if (typeof schema !== 'string' || !schema.startsWith(`${family}-`) || schema === formatName) return;
  throw new Failure(EXIT.input, `${file} has format "${schema}"; this program reads "${formatName}"`, {
    file,
    found: schema,
    expected: formatName,
    advice: 'Use the version of the program that wrote it, or a newer one.',
  });
}

export function readJsonFile<S extends z.ZodType>(file: string, schema: S, formatName: string): JsonFile<z.infer<S>> {
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    throw cannotRead(file, error);
  }
  const text = bytes.toString('utf8');
  const parsed = parse(text, file, formatName);
  const result = schema.safeParse(parsed.value);
  if (result.success) {
    return { value: result.data as z.infer<S>, sha256: createHash('sha256').update(bytes).digest('hex') };
  }
  refuseNewer(parsed.value, formatName, file);
  const issue = result.error.issues[0];
  const keys = issue?.code === 'unrecognized_keys' ? issue.keys : [];
  const path: JsonPath = [...((issue?.path ?? []) as (string | number)[]), ...keys.slice(0, 1)];
  const others = result.error.issues.length - 1;
  const rest = others > 0 ? ` ${others} more to put right after this one.` : '';
  throw new Failure(EXIT.input, `${file} does not fit the format "${formatName}"`, {
    file,
    ...placeOf(text, parsed.offsetOf(path)),
    found: `${path.join('.') || 'the file'}: ${shown(at(parsed.value, path))}`,
    expected:
      keys.length > 0
        ? knownNames(schema, issue?.path ?? [], String(keys[0]))
        : (issue?.message ?? formatName).replace(/^Invalid input: expected /, ''),
    advice: `The format is printed by: vaporwright schema ${shortName(formatName)}.${rest}`,
  });
}
