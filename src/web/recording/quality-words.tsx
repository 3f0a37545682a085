/** How good a recording is, in words: what a technician should know before trusting it. */
import type { ReactNode } from 'react';
import { EXPECTED_SKIPS, SKIP_REASONS, type SkipReason } from '../../recording/read-report.ts';
import type { ReadSummary } from '../../server/contract/recordings.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useInUnits } from '../units/use-in-units.ts';

const isExpected = (reason: string): boolean => EXPECTED_SKIPS.includes(reason as SkipReason);

export function QualityWords({ report }: { readonly report: ReadSummary }): ReactNode {
  const { recording } = useText();
  const { fixed } = useNumbers();
  const inUnits = useInUnits();
  const text = recording.quality;
  const skipped = report.skipped.filter(({ reason }) => !isExpected(reason));
  return (
    <details className="quality">
      <summary>
        {text.title}
        {report.warnings.length > 0 ? ` (${report.warnings.length})` : ''}
      </summary>
      <div className="stack">
        <p>{text.lines(fixed(report.samples, 0), fixed(report.linesRead, 0))}</p>
        <ul>
          {report.quality.map((words) => (
            <li key={words}>{inUnits(recording.said(words))}</li>
          ))}
          {report.warnings.map((words) => (
            <li key={words} className="warning">
              {inUnits(recording.said(words))}
            </li>
          ))}
          {skipped.map(({ reason, count, firstLines }) => (
            <li key={reason}>
              {text.skipped(
                fixed(count, 0),
                recording.said(SKIP_REASONS[reason as SkipReason] ?? reason),
                firstLines.join(', '),
              )}
            </li>
          ))}
        </ul>
      </div>
    </details>
  );
}
