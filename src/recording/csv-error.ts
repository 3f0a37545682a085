import type { Mapping } from './mapping.ts';

/** Where something was found: line and column count from 1, `cell` is the column's name. */
export interface CsvPlace {
  readonly line?: number;
  readonly column?: number;
  readonly cell?: string;
}

export interface CsvErrorFacts extends CsvPlace {
  readonly fileName: string;
  readonly found: string;
  readonly expected: string;
  readonly whatToDo: string;
  /** The mapping as far as it was guessed, so that a person can correct it instead of starting afresh. */
  readonly mapping?: Mapping;
}

const quote = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}...` : text);

/** Says where a thing stands, in the form `file, line 3, column 2 "name"`. */
export function describePlace(fileName: string, place: CsvPlace): string {
  const parts = [fileName];
  if (place.line !== undefined) parts.push(`line ${place.line}`);
  if (place.column !== undefined)
    parts.push(`column ${place.column}${place.cell === undefined ? '' : ` "${place.cell}"`}`);
  return parts.join(', ');
}

/** A recording that cannot be read. Nothing of it is handed out. */
export class CsvError extends Error {
  override readonly name = 'CsvError';
  readonly facts: CsvErrorFacts;

  constructor(facts: CsvErrorFacts) {
    super(
      `${describePlace(facts.fileName, facts)}: found ${quote(facts.found)}; expected ${facts.expected}. ${facts.whatToDo}`,
    );
    this.facts = facts;
  }
}
