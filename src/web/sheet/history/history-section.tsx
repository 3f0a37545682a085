import { type ReactNode, useState } from 'react';
import type { HistoryEntry, SectionName } from '../../../jobs/record/job.ts';
import { readHistory } from '../../api/jobs.ts';
import { ErrorMessage } from '../../kit/message.tsx';
import { useLoaded } from '../../kit/use-loaded.ts';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { Difference } from '../difference/difference.tsx';
import { SECTION_NAMES } from '../sections.ts';
import { useSheet } from '../sheet-context.ts';

export function HistorySection(): ReactNode {
  const text = useText();
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details onToggle={(event) => event.target === event.currentTarget && setIsOpen(event.currentTarget.open)}>
      <summary>{text.job.history.show}</summary>
      {isOpen && <HistoryList />}
    </details>
  );
}

function HistoryList(): ReactNode {
  const { job } = useSheet();
  const text = useText();
  // The list grows with the job's version.
  const [history, again] = useLoaded(`${job.id} ${job.version}`, () => readHistory(job.id));
  if (history.state === 'loading') return <p className="quiet">{text.common.loading}</p>;
  if (history.state === 'failed') return <ErrorMessage error={history.error} onRetry={again} />;
  return (
    <ul className="rows">
      {history.value.toReversed().map((entry) => (
        <Entry key={`${entry.version} ${entry.at}`} entry={entry} />
      ))}
    </ul>
  );
}

function Entry({ entry }: { readonly entry: HistoryEntry }): ReactNode {
  const text = useText();
  const numbers = useNumbers();
  const words = text.job.history;
  const section = entry.section === null ? '' : (text.job.sectionNames[entry.section as SectionName] ?? entry.section);
  const { before, after } = entry;
  const changed =
    before !== undefined || after !== undefined ? SECTION_NAMES.find((name) => name === entry.section) : undefined;
  return (
    <li>
      <p>
        {section === '' ? words.what[entry.what] : `${section}: ${words.what[entry.what]}`}{' '}
        <span className="small quiet">{text.job.check.by(entry.by, numbers.dateTime(entry.at))}</span>
      </p>
      {changed !== undefined && (
        <details>
          <summary className="small">
            {words.detail}
            <span className="visually-hidden">
              : {section}, {numbers.dateTime(entry.at)}
            </span>
          </summary>
          <Difference section={changed} mine={before} theirs={after} mineName={words.before} theirsName={words.after} />
        </details>
      )}
    </li>
  );
}
