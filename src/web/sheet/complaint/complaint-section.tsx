import type { ReactNode } from 'react';
import type { Job } from '../../../jobs/record/job.ts';
import { Several } from '../../kit/choice.tsx';
import { TextField } from '../../kit/fields.tsx';
import { Fold } from '../../kit/fold.tsx';
import { useText } from '../../text/language.ts';
import { useSheet } from '../sheet-context.ts';
import { CodesEditor } from './codes-editor.tsx';

type Kind = Job['complaint']['types'][number];

export function ComplaintSection(): ReactNode {
  const { job, save, isReadOnly } = useSheet();
  const text = useText();
  const words = text.job.complaint;
  const { complaint } = job;
  const kinds = complaint.types.map((kind) => text.trade.complaints[kind]).join(', ');
  return (
    <>
      {isReadOnly ? (
        complaint.words !== '' && (
          <p className="owner-words">
            <q>{complaint.words}</q>
          </p>
        )
      ) : (
        <TextField
          label={words.words}
          lines={2}
          isQuote
          maxLength={4000}
          value={complaint.words}
          onChange={(value) => save('complaint', { ...complaint, words: value })}
        />
      )}
      {isReadOnly ? (
        kinds !== '' && <p>{kinds}</p>
      ) : (
        <Fold label={words.kinds} words={kinds} isOpenAtFirst={complaint.types.length === 0}>
          <Several<Kind>
            label={words.kinds}
            isStacked
            options={(Object.keys(text.trade.complaints) as Kind[]).map((value) => ({
              value,
              name: text.trade.complaints[value],
            }))}
            values={complaint.types}
            onChange={(types) => save('complaint', { ...complaint, types })}
          />
        </Fold>
      )}
      <CodesEditor />
    </>
  );
}
