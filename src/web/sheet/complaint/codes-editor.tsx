import { type FormEvent, type ReactNode, useState } from 'react';
import type { Job } from '../../../jobs/record/job.ts';
import { Button } from '../../kit/button.tsx';
import { SelectField, TextField } from '../../kit/fields.tsx';
import { Fold } from '../../kit/fold.tsx';
import { useText } from '../../text/language.ts';
import { useSheet } from '../sheet-context.ts';
import { codesIn } from './code-form.ts';
import { FreezeFrame } from './freeze-frame.tsx';

type Code = Job['codes'][number];

export function CodesEditor(): ReactNode {
  const { job, save, isReadOnly } = useSheet();
  const text = useText();
  const words = text.job.complaint;
  const [typed, setTyped] = useState('');
  const [status, setStatus] = useState<Code['status']>('stored');
  const [error, setError] = useState<string | undefined>(undefined);

  const add = (event: FormEvent): void => {
    event.preventDefault();
    const codes = codesIn(typed);
    if (codes === null || codes.length === 0) {
      setError(words.badCode);
      return;
    }
    const twice = codes.find((code) => job.codes.some((c) => c.code === code && c.status === status));
    if (twice !== undefined) {
      setError(words.codeTwice(twice, text.trade.codeStatus[status]));
      return;
    }
    save('codes', [...job.codes, ...codes.map((code) => ({ code, status }))]);
    setTyped('');
    setError(undefined);
  };

  return (
    <div className="codes">
      {job.codes.length === 0 && <p className="quiet">{words.noCodes}</p>}
      {!isReadOnly && (
        <Fold label={words.codes} act={words.addCode} isOpenAtFirst={job.codes.length === 0}>
          <form className="fields" onSubmit={add}>
            <TextField
              label={words.code}
              value={typed}
              error={error}
              spellCheck={false}
              onChange={(value) => {
                setTyped(value.toUpperCase());
                setError(undefined);
              }}
            />
            <SelectField
              label={words.status}
              value={status}
              options={(Object.keys(text.trade.codeStatus) as Code['status'][]).map((value) => ({
                value,
                name: text.trade.codeStatus[value],
              }))}
              onChange={setStatus}
            />
            <div className="align-end">
              <Button type="submit">{words.addCode}</Button>
            </div>
          </form>
        </Fold>
      )}
      {job.codes.length > 0 && (
        <ul className="rows">
          {job.codes.map((code, at) => (
            <li key={`${code.code} ${code.status}`}>
              <div className="row-head">
                <p>
                  <span className="code">{code.code}</span> {text.trade.codeStatus[code.status]}
                </p>
                {!isReadOnly && (
                  <Button
                    kind="bare"
                    aria-label={words.removeCode(code.code)}
                    onClick={() =>
                      save(
                        'codes',
                        job.codes.filter((_, i) => i !== at),
                      )
                    }
                  >
                    {text.common.remove}
                  </Button>
                )}
              </div>
              <FreezeFrame
                code={code}
                isReadOnly={isReadOnly}
                onChange={(next) =>
                  save(
                    'codes',
                    job.codes.map((c, i) => (i === at ? next : c)),
                  )
                }
              />
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
