import { Tally } from '../read-report.ts';

/** Why a line of a capture gave no frame. */
export const LINE_REASONS = {
  blank: 'is empty',
  remark: 'is a remark',
  remote: 'asks for a frame and carries no data',
  'error-frame': 'is an error frame of the adapter',
  'bad-stamp': 'has a time stamp of no known form',
  'bad-id': 'has an identifier that is neither 3 nor 8 hexadecimal digits of 11 or 29 bits',
  'bad-data': 'has data that are not pairs of hexadecimal digits, or another number of them than it says',
  'too-much-data': 'carries more bytes than a frame can',
  'too-long': 'is longer than a line of a capture can be',
  'no-frame': 'is no frame of the candump text form',
} as const;
export type LineReason = keyof typeof LINE_REASONS;

/** Lines that proper captures have; they call for no remark. */
export const EXPECTED_LINES: readonly LineReason[] = ['blank', 'remark', 'remote'];

/** What became of every line: `lines` = `frames` + the sum of `skipped`. */
export class LineCounts {
  lines = 0;
  frames = 0;
  bytes = 0;
  readonly skipped = new Map<LineReason, Tally>();

  skip(reason: LineReason, example: string): void {
    let tally = this.skipped.get(reason);
    if (tally === undefined) {
      tally = new Tally();
      this.skipped.set(reason, tally);
    }
    tally.add(this.lines, example);
  }
}
