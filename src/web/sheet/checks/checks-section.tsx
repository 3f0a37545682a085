import { type ReactNode, useState } from 'react';
import { readEntry } from '../../../checks/read-entry.ts';
import { whatNumbersMean } from '../../../checks/what-numbers-mean.ts';
import type { CheckResult } from '../../../jobs/record/job.ts';
import { printedUnit } from '../../../units/printed-unit.ts';
import { Button } from '../../kit/button.tsx';
import { Message } from '../../kit/message.tsx';
import { useMeantWords } from '../../next-check/meant-words.ts';
import { NextCheck } from '../../next-check/next-check.tsx';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { useSheet } from '../sheet-context.ts';
import { CheckDialog } from './check-dialog.tsx';

export function ChecksSection(): ReactNode {
  const { job, save, isReadOnly } = useSheet();
  const text = useText();
  const words = text.job.check;
  const [editing, setEditing] = useState<CheckResult | 'new' | null>(null);
  const finding = job.findings.at(-1);
  const isNewer = finding?.outdated === true && job.checks.some((check) => check.at > finding.madeAt);
  const keep = (check: CheckResult): void => {
    const isThere = job.checks.some((c) => c.id === check.id);
    save('checks', isThere ? job.checks.map((c) => (c.id === check.id ? check : c)) : [...job.checks, check]);
    setEditing(null);
  };
  return (
    <>
      <NextCheck />
      <h3>{text.checks.next.byHand}</h3>
      <p>{words.lead}</p>
      {isNewer && (
        <Message>
          <p>
            {words.outdated} <a href="#finding">{text.job.sections.finding}</a>
          </p>
        </Message>
      )}
      {job.checks.length === 0 ? (
        <p className="quiet">{words.none}</p>
      ) : (
        <ul className="rows">
          {job.checks.map((check) => (
            <CheckRow
              key={check.id}
              check={check}
              isReadOnly={isReadOnly}
              onEdit={() => setEditing(check)}
              onRemove={() =>
                save(
                  'checks',
                  job.checks.filter((c) => c.id !== check.id),
                )
              }
            />
          ))}
        </ul>
      )}
      {!isReadOnly && (
        <div className="buttons">
          <Button onClick={() => setEditing('new')}>{words.record}</Button>
        </div>
      )}
      {editing !== null && (
        <CheckDialog check={editing === 'new' ? null : editing} onSave={keep} onClose={() => setEditing(null)} />
      )}
    </>
  );
}

interface RowProps {
  readonly check: CheckResult;
  readonly isReadOnly: boolean;
  readonly onEdit: () => void;
  readonly onRemove: () => void;
}

function CheckRow({ check, isReadOnly, onEdit, onRemove }: RowProps): ReactNode {
  const text = useText();
  const numbers = useNumbers();
  const words = text.job.check;
  const named = (causes: readonly (keyof typeof text.trade.causes)[]): string =>
    numbers.list(causes.map((cause) => text.trade.causes[cause]));
  const meantWords = useMeantWords();
  const read =
    check.checkId === undefined || check.answer === undefined ? null : readEntry(check.checkId, check.answer);
  const meant = read?.ok === true && read.meaning !== undefined ? whatNumbersMean(read.meaning) : [];
  const sides = [
    check.speaksFor.length > 0 ? `${words.speaksFor}: ${named(check.speaksFor)}` : '',
    check.speaksAgainst.length > 0 ? `${words.speaksAgainst}: ${named(check.speaksAgainst)}` : '',
  ].filter((side) => side !== '');
  return (
    <li>
      <div className="row-head">
        <h3>{check.what}</h3>
        {!isReadOnly && (
          <div className="buttons">
            {check.checkId === undefined && (
              <Button kind="bare" aria-label={words.edit(check.what)} onClick={onEdit}>
                {text.common.change}
              </Button>
            )}
            <Button kind="bare" aria-label={words.removeCheck(check.what)} onClick={onRemove}>
              {text.common.remove}
            </Button>
          </div>
        )}
      </div>
      <p>
        {check.result}
        {check.measured && (
          <>
            {' '}
            <strong>
              {numbers.fixed(check.measured.value, decimalsOf(check.measured.value))}
              {'\u00a0'}
              {printedUnit(check.measured.unit)}
            </strong>
          </>
        )}
      </p>
      {meant.length > 0 && <p>{meant.map(meantWords).join('; ')}</p>}
      <p className="small">
        {check.checkId !== undefined && sides.length === 0
          ? text.checks.next.weighedBeside(check.checkId)
          : sides.length === 0
            ? words.nothingSaid
            : `${sides.join('; ')} (${text.trade.strengths[check.strength]}).`}
      </p>
      <p className="small quiet">{words.by(check.by, numbers.dateTime(check.at))}</p>
    </li>
  );
}

/** As many decimals as were typed, four at most. */
const decimalsOf = (value: number): number => Math.min(4, (String(value).split('.')[1] ?? '').length);
