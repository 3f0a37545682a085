import type { ReactNode } from 'react';
import type { SectionName } from '../../../jobs/record/job.ts';
import { useText } from '../../text/language.ts';
import { partsThatDiffer, sectionLines } from './section-lines.ts';
import { useLineWords } from './use-line-words.ts';

interface Props {
  readonly section: SectionName;
  readonly mine: unknown;
  readonly theirs: unknown;
  readonly mineName: string;
  readonly theirsName: string;
}

/** Two states of a section side by side: only what differs, part by part. */
export function Difference({ section, mine, theirs, mineName, theirsName }: Props): ReactNode {
  const { job, common } = useText();
  const { conflict } = job;
  const words = useLineWords();
  if (words === undefined) return <p className="quiet">{common.loading}</p>;
  const parts = partsThatDiffer(sectionLines(mine, words, section), sectionLines(theirs, words, section));
  const cell = (text: string | undefined): ReactNode =>
    text === undefined ? <span className="quiet">{conflict.absent}</span> : <span className="diff">{text}</span>;
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">{conflict.part}</th>
            <th scope="col">{mineName}</th>
            <th scope="col">{theirsName}</th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => (
            <tr key={part.key}>
              <th scope="row" className="small quiet">
                {part.name === '' ? job.sectionNames[section] : part.name}
              </th>
              <td>{cell(part.mine)}</td>
              <td>{cell(part.theirs)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
