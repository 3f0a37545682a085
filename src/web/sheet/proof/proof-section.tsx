import type { ReactNode } from 'react';
import type { Job, RecordingEntry } from '../../../jobs/record/job.ts';
import { Button } from '../../kit/button.tsx';
import { Choice, Several } from '../../kit/choice.tsx';
import { FileButton, TextField } from '../../kit/fields.tsx';
import { ProofNumbers } from '../../proof/proof-numbers.tsx';
import { useText } from '../../text/language.ts';
import { useSheet } from '../sheet-context.ts';

type Proof = NonNullable<Job['proof']>;

const takenAt = (job: Job, taken: RecordingEntry['taken']): RecordingEntry[] =>
  job.recordings.filter((recording) => recording.taken === taken);

/** A proof names recordings of both kinds that exist; what is taken out of the job leaves it too. */
export function firstProof(job: Job): Proof {
  return {
    before: takenAt(job, 'before-repair').map((r) => r.id),
    after: takenAt(job, 'after-repair').map((r) => r.id),
    verdict: 'not-proven',
    words: '',
    missing: '',
  };
}

export function ProofSection(): ReactNode {
  const { job, save, takeIn, isReadOnly } = useSheet();
  const text = useText();
  const words = text.job.proof;
  const { proof } = job;
  const before = takenAt(job, 'before-repair');
  const after = takenAt(job, 'after-repair');
  const upload = !isReadOnly && (
    <FileButton label={words.uploadAfter} multiple onFiles={(files) => void takeIn(files, 'after-repair')} />
  );
  if (proof === null) {
    return (
      <>
        <p>{words.lead}</p>
        <ProofNumbers />
        {after.length === 0 && <p className="quiet">{words.noneAfter}</p>}
        {!isReadOnly && (
          <div className="buttons">
            {upload}
            <Button onClick={() => save('proof', firstProof(job))}>{words.begin}</Button>
          </div>
        )}
      </>
    );
  }
  const set = (change: Partial<Proof>): void => save('proof', { ...proof, ...change });
  return (
    <>
      <p>{words.lead}</p>
      <ProofNumbers />
      {before.length === 0 ? (
        <p className="quiet">{words.noneBefore}</p>
      ) : (
        <Several
          label={words.before}
          options={before.map(({ id, label }) => ({ value: id, name: label }))}
          values={proof.before}
          disabled={isReadOnly}
          onChange={(ids) => set({ before: ids })}
        />
      )}
      {after.length === 0 ? (
        <p className="quiet">{words.noneAfter}</p>
      ) : (
        <Several
          label={words.after}
          options={after.map(({ id, label }) => ({ value: id, name: label }))}
          values={proof.after}
          disabled={isReadOnly}
          onChange={(ids) => set({ after: ids })}
        />
      )}
      {upload && <div className="buttons">{upload}</div>}
      <Choice
        label={words.verdict}
        isStacked
        options={(['held', 'not-held', 'not-proven'] as const).map((value) => ({ value, name: words.verdicts[value] }))}
        value={proof.verdict}
        disabled={isReadOnly}
        onChange={(verdict) => set({ verdict })}
      />
      <TextField
        label={words.words}
        lines={2}
        value={proof.words}
        maxLength={4000}
        readOnly={isReadOnly}
        onChange={(value) => set({ words: value })}
      />
      <TextField
        label={words.missing}
        hint={words.missingHint}
        lines={2}
        value={proof.missing}
        maxLength={2000}
        readOnly={isReadOnly}
        onChange={(missing) => set({ missing })}
      />
      {!isReadOnly && (
        <div className="buttons">
          <Button kind="bare" onClick={() => save('proof', null)}>
            {words.withdraw}
          </Button>
        </div>
      )}
    </>
  );
}
