/** Why a line of the file did not become a sample. */
export const SKIP_REASONS = {
  preamble: 'stands before the header',
  header: 'is the header',
  'unit-row': 'is the row of units below the header',
  'repeated-header': 'repeats the header or the units',
  blank: 'is empty',
  comment: 'is a comment',
  'too-few-cells': 'has fewer cells than the header',
  'too-many-cells': 'has more cells than the header',
  'no-time': 'has an empty time cell',
  'unreadable-time': 'has a time cell that cannot be read',
  'duplicated-time': 'has the same time as the sample before it; the first is kept',
  'backward-time': 'has a time before the latest sample; it is left out until time has passed that again',
  'time-ahead': 'has a time ahead of all the lines that follow it',
  'other-frame': 'is a frame of a bus capture that begins no row of samples',
} as const;
export type SkipReason = keyof typeof SKIP_REASONS;

/** Lines that every proper file has; they call for no remark. */
export const EXPECTED_SKIPS: readonly SkipReason[] = [
  'preamble',
  'header',
  'unit-row',
  'blank',
  'comment',
  'other-frame',
];

const FIRST_LINES = 5;

/** Counts lines and keeps the first of them for show. */
export class Tally {
  count = 0;
  readonly firstLines: number[] = [];
  example: string | undefined;

  add(line: number, example: string): void {
    this.count++;
    if (this.firstLines.length < FIRST_LINES) this.firstLines.push(line);
    this.example ??= example.length > 60 ? `${example.slice(0, 57)}...` : example;
  }
}

export interface SkippedLines {
  readonly reason: SkipReason;
  readonly count: number;
  readonly firstLines: readonly number[];
  readonly example?: string;
}

export interface ColumnCells {
  readonly column: string;
  /** Empty cells, and words that say nothing was measured. */
  readonly missing: number;
  /** Cells with something in them that is no number; their samples are absent. */
  readonly unreadable: number;
  readonly firstUnreadableLines: readonly number[];
  readonly example?: string;
}

export interface Span {
  readonly fromS: number;
  readonly toS: number;
}

/** What happened to every line of the file. `linesRead` = `samples` + the sum of `skipped`. */
export interface ReadReport {
  readonly fileName: string;
  readonly linesRead: number;
  readonly samples: number;
  readonly skipped: readonly SkippedLines[];
  readonly cells: readonly ColumnCells[];
  readonly ignoredColumns: readonly { readonly column: string; readonly reasons: readonly string[] }[];
  readonly pauses: readonly Span[];
  /** Time of the first sample on the file's own clock, s; the recording counts from it. */
  readonly firstTimeS: number;
  readonly warnings: readonly string[];
}
