import type { CsvLayout } from './csv-layout.ts';
import type { Mapping } from './mapping.ts';
import type { Span } from './read-report.ts';
import { EXPECTED_SKIPS, type ReadReport, SKIP_REASONS, type SkipReason, type Tally } from './read-report.ts';

interface ReportFacts {
  readonly fileName: string;
  readonly layout: CsvLayout;
  readonly mapping: Mapping;
  readonly skipped: ReadonlyMap<SkipReason, Tally>;
  readonly linesRead: number;
  readonly samples: number;
  /** Cells of a column that turned out to be no on/off command, beside those that could not be read. */
  readonly spoilt: ReadonlyMap<string, number>;
  readonly warnings: readonly string[];
  readonly pauses: readonly Span[];
  readonly firstTimeS: number;
}

/** Puts the account of all lines and cells together. */
export function makeReport(facts: ReportFacts): ReadReport {
  const { layout, mapping, spoilt } = facts;
  const warnings = [...facts.warnings];
  const order = Object.keys(SKIP_REASONS) as SkipReason[];
  const skipped = order.flatMap((reason) => {
    const tally = facts.skipped.get(reason);
    if (!tally) return [];
    const { count, firstLines, example } = tally;
    if (!EXPECTED_SKIPS.includes(reason))
      warnings.push(
        `${count} line${count === 1 ? '' : 's'} left out (first: line ${firstLines[0]}): each ${SKIP_REASONS[reason]}`,
      );
    return [{ reason, count, firstLines, ...(example === undefined ? {} : { example }) }];
  });
  const cells = layout.columns.map((column) => {
    const unreadable = column.unreadable.count + (spoilt.get(column.mapping.column) ?? 0);
    const { firstLines, example } = column.unreadable;
    if (unreadable > 0)
      warnings.push(
        `${unreadable} cell${unreadable === 1 ? '' : 's'} of column "${column.mapping.column}" cannot be read${firstLines[0] === undefined ? '' : ` (first: line ${firstLines[0]}, "${example}")`}`,
      );
    return {
      column: column.mapping.column,
      missing: column.missing,
      unreadable,
      firstUnreadableLines: firstLines,
      ...(example === undefined ? {} : { example }),
    };
  });
  return {
    fileName: facts.fileName,
    linesRead: facts.linesRead,
    samples: facts.samples,
    skipped,
    cells,
    ignoredColumns: mapping.columns
      .filter(({ channel }) => channel === null)
      .map(({ column, reasons }) => ({ column, reasons: reasons ?? [] })),
    pauses: facts.pauses,
    firstTimeS: facts.firstTimeS,
    warnings,
  };
}
