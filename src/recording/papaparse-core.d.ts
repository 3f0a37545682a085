/**
 * The part of papaparse that the reader uses, declared without Node or DOM types, for the type-check of
 * the pure rooms (tsconfig.pure.json maps the name here; elsewhere the package's own types are used).
 */
interface ParseOutcome {
  readonly data: string[][];
  readonly errors: readonly { readonly code: string; readonly message: string; readonly row?: number }[];
  readonly meta: { readonly cursor: number };
}

declare class Parser {
  constructor(config: { delimiter?: string; newline?: '\n' | '\r' | '\r\n' });
  parse(input: string, baseIndex: number, ignoreLastRow: boolean): ParseOutcome;
}

declare const Papa: { readonly Parser: typeof Parser };
export default Papa;
