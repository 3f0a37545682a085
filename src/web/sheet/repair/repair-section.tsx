import { type ReactNode, useState } from 'react';
import type { Job } from '../../../jobs/record/job.ts';
import { Button } from '../../kit/button.tsx';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { useSheet } from '../sheet-context.ts';
import { RepairDialog } from './repair-dialog.tsx';

type Repair = Job['repairs'][number];

export function RepairSection(): ReactNode {
  const { job, save, isReadOnly } = useSheet();
  const text = useText();
  const numbers = useNumbers();
  const words = text.job.repair;
  const [editing, setEditing] = useState<Repair | 'new' | null>(null);
  const keep = (repair: Repair): void => {
    const isThere = job.repairs.some((r) => r.id === repair.id);
    save('repairs', isThere ? job.repairs.map((r) => (r.id === repair.id ? repair : r)) : [...job.repairs, repair]);
    setEditing(null);
  };
  return (
    <>
      {job.repairs.length === 0 ? (
        <p className="quiet">{words.none}</p>
      ) : (
        <ul className="rows">
          {job.repairs.map((repair) => (
            <li key={repair.id}>
              <div className="row-head">
                <h3>{repair.what}</h3>
                {!isReadOnly && (
                  <div className="buttons">
                    <Button kind="bare" aria-label={words.edit(repair.what)} onClick={() => setEditing(repair)}>
                      {text.common.change}
                    </Button>
                    <Button
                      kind="bare"
                      aria-label={words.removeRepair(repair.what)}
                      onClick={() =>
                        save(
                          'repairs',
                          job.repairs.filter((r) => r.id !== repair.id),
                        )
                      }
                    >
                      {text.common.remove}
                    </Button>
                  </div>
                )}
              </div>
              {repair.parts.length > 0 && (
                <p>
                  {words.parts}:{' '}
                  {numbers.list(
                    repair.parts.map((part) =>
                      part.number === undefined ? part.name : `${part.name} (${part.number})`,
                    ),
                  )}
                </p>
              )}
              {repair.addresses.length > 0 && (
                <p className="small">
                  {words.addresses}: {numbers.list(repair.addresses.map((cause) => text.trade.causes[cause]))}
                </p>
              )}
              <p className="small quiet">
                {text.job.check.by(repair.by, numbers.dateTime(repair.at))}
                {repair.minutes !== undefined && ` · ${words.minutesWords(repair.minutes)}`}
              </p>
            </li>
          ))}
        </ul>
      )}
      {!isReadOnly && (
        <div className="buttons">
          <Button onClick={() => setEditing('new')}>{words.record}</Button>
        </div>
      )}
      {editing !== null && (
        <RepairDialog repair={editing === 'new' ? null : editing} onSave={keep} onClose={() => setEditing(null)} />
      )}
    </>
  );
}
