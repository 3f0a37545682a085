/** One finding: the sentence first, then what it rests on. */
import { lazy, type ReactNode, Suspense, useMemo } from 'react';
import type { JobFinding } from '../../jobs/record/job.ts';
import { findingFromStored } from '../../report/finding-format.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { CauseList } from './cause-list.tsx';
import { EvidenceBars } from './evidence-bars.tsx';
import { ReasonLists } from './reason-lists.tsx';
import { SizeScale } from './size-scale.tsx';
import { Verdict } from './verdict.tsx';
import './finding.css';

// The chart and its library are fetched with the first trace.
const Traces = lazy(async () => ({ default: (await import('./traces.tsx')).Traces }));

interface Props {
  readonly made: JobFinding;
  readonly isGuest?: boolean;
}

export function FindingSheet({ made, isGuest = false }: Props): ReactNode {
  const { finding: text } = useText();
  const { dateTime } = useNumbers();
  const { sheet } = made;
  const finding = useMemo(() => findingFromStored(sheet.finding), [sheet]);
  return (
    <div className="finding-sheet">
      <Verdict finding={finding} />
      <p className="small quiet">
        {text.madeFrom(sheet.recordings.length, sheet.program)}, {text.madeAt(dateTime(made.madeAt))}
        {made.outdated ? ` · ${text.outdatedShort}` : ''}
      </p>
      <SizeScale finding={finding} isGuest={isGuest} />
      <CauseList finding={finding} />
      {finding.overlays.length > 0 && (
        <Suspense fallback={<p className="quiet">{text.trace.loading}</p>}>
          <Traces finding={finding} recordings={sheet.recordings} />
        </Suspense>
      )}
      <EvidenceBars finding={finding} recordings={sheet.recordings} />
      <ReasonLists finding={finding} />
    </div>
  );
}
