/** JSON with places: like JSON.parse, but every value knows where in the text it stands, and errors say it. */

export type JsonPath = readonly (string | number)[];

export class JsonTextError extends Error {
  readonly offset: number;
  readonly found: string;
  readonly expected: string;
  constructor(offset: number, found: string, expected: string) {
    super(`found ${found}, expected ${expected}`);
    this.name = 'JsonTextError';
    this.offset = offset;
    this.found = found;
    this.expected = expected;
  }
}

export interface JsonText {
  readonly value: unknown;
  /** Offset of the value at a path, or of the nearest enclosing value that exists. */
  readonly offsetOf: (path: JsonPath) => number;
}

const keyOf = (path: JsonPath): string => JSON.stringify(path);
/** From quote to quote; what stands between is judged by JSON.parse. */
const STRING = /"(?:[^"\\\n]|\\.)*"/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const SPACE = /[ \t\r\n]*/y;
const WORDS: readonly (readonly [string, unknown])[] = [
  ['true', true],
  ['false', false],
  ['null', null],
];

class Reader {
  readonly text: string;
  readonly offsets = new Map<string, number>();
  at = 0;

  constructor(text: string) {
    this.text = text;
  }

  match(pattern: RegExp): string | null {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0] ?? null;
    if (found !== null) this.at += found.length;
    return found;
  }

  fail(expected: string): never {
    const character = this.text[this.at];
    throw new JsonTextError(
      this.at,
      character === undefined ? 'the end of the file' : JSON.stringify(character),
      expected,
    );
  }

  take(character: string): boolean {
    this.match(SPACE);
    if (this.text[this.at] !== character) return false;
    this.at += 1;
    return true;
  }

  string(expected: string): string {
    const start = this.at;
    const text = this.match(STRING) ?? this.fail(expected);
    try {
      return JSON.parse(text) as string;
    } catch {
      throw new JsonTextError(start, text, 'a string with valid escapes and no control characters');
    }
  }

  value(path: JsonPath): unknown {
    this.match(SPACE);
    this.offsets.set(keyOf(path), this.at);
    const character = this.text[this.at];
    if (character === '{') return this.object(path);
    if (character === '[') return this.array(path);
    if (character === '"') return this.string('a closed string without line breaks');
    for (const [word, value] of WORDS) {
      if (this.text.startsWith(word, this.at)) {
        this.at += word.length;
        return value;
      }
    }
    const number = this.match(NUMBER);
    return number === null ? this.fail('a value') : Number(number);
  }

  object(path: JsonPath): unknown {
    const entries: [string, unknown][] = [];
    this.at += 1;
    if (this.take('}')) return {};
    do {
      this.match(SPACE);
      const keyAt = this.at;
      const key = this.string('a key in double quotes');
      if (entries.some(([other]) => other === key)) {
        throw new JsonTextError(keyAt, `the key ${JSON.stringify(key)} a second time`, 'every key once');
      }
      if (!this.take(':')) this.fail('":"');
      entries.push([key, this.value([...path, key])]);
    } while (this.take(','));
    if (!this.take('}')) this.fail('"," or "}"');
    return Object.fromEntries(entries);
  }

  array(path: JsonPath): unknown {
    const items: unknown[] = [];
    this.at += 1;
    if (this.take(']')) return items;
    do {
      items.push(this.value([...path, items.length]));
    } while (this.take(','));
    if (!this.take(']')) this.fail('"," or "]"');
    return items;
  }
}

export function parseJsonText(text: string): JsonText {
  const reader = new Reader(text.startsWith('\ufeff') ? ` ${text.slice(1)}` : text);
  const value = reader.value([]);
  reader.match(SPACE);
  if (reader.at < text.length) reader.fail('the end of the file');
  return {
    value,
    offsetOf: (path) => {
      for (let length = path.length; length > 0; length--) {
        const offset = reader.offsets.get(keyOf(path.slice(0, length)));
        if (offset !== undefined) return offset;
      }
      return 0;
    },
  };
}

/** Line and column of an offset, both counted from 1. */
export function placeOf(text: string, offset: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, offset);
  return { line: before.split('\n').length, column: offset - before.lastIndexOf('\n') };
}
