/** The content of the section "Finding". */
import { type ReactNode, useState } from 'react';
import type { JobFinding } from '../../jobs/record/job.ts';
import { Button } from '../kit/button.tsx';
import { SelectField } from '../kit/fields.tsx';
import { Message } from '../kit/message.tsx';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { FindingMaker } from './finding-maker.tsx';
import { FindingSheet } from './finding-sheet.tsx';

export function FindingSection(): ReactNode {
  const { job } = useSheet();
  const { finding: text } = useText();
  const newest = job.findings.at(-1);
  const [chosenId, setChosenId] = useState<string | null>(null);
  const chosen = job.findings.find(({ id }) => id === chosenId) ?? newest;
  return (
    <div className="finding">
      {chosen?.outdated && chosen === newest && (
        <Message isBad>
          <p>{text.outdated}</p>
        </Message>
      )}
      {chosen === undefined ? <p>{text.none}</p> : <FindingSheet key={chosen.id} made={chosen} />}
      <FindingMaker hasOne={newest !== undefined} isOutdated={newest?.outdated ?? false} />
      {job.findings.length > 1 && chosen !== undefined && (
        <OlderFindings chosen={chosen} newestId={newest?.id ?? ''} onChoose={setChosenId} />
      )}
    </div>
  );
}

interface OlderProps {
  readonly chosen: JobFinding;
  readonly newestId: string;
  readonly onChoose: (id: string | null) => void;
}

function OlderFindings({ chosen, newestId, onChoose }: OlderProps): ReactNode {
  const { job } = useSheet();
  const { finding: text, trade } = useText();
  const { dateTime } = useNumbers();
  return (
    <div className="no-print fields">
      <SelectField
        label={text.older}
        value={chosen.id}
        options={[...job.findings].reverse().map(({ id, madeAt, outdated, sheet }) => ({
          value: id,
          name: [
            dateTime(madeAt),
            trade.verdicts[sheet.finding.verdict],
            id === newestId ? text.newest : '',
            outdated ? text.outdatedShort : '',
          ]
            .filter((part) => part !== '')
            .join(' · '),
        }))}
        onChange={(id) => onChoose(id === newestId ? null : id)}
      />
      {chosen.id !== newestId && <Button onClick={() => onChoose(null)}>{text.newest}</Button>}
    </div>
  );
}
