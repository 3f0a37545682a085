import { type FormEvent, type ReactNode, useState } from 'react';
import type { Job } from '../../jobs/record/job.ts';
import { createJob } from '../api/jobs.ts';
import { Button } from '../kit/button.tsx';
import { Several } from '../kit/choice.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { TextField } from '../kit/fields.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { goTo } from '../router/router.ts';
import { codesIn } from '../sheet/complaint/code-form.ts';
import { useText } from '../text/language.ts';

type Kind = Job['complaint']['types'][number];

/** A job in under a minute: four lines, all of them optional. */
export function NewJobDialog({ onClose }: { readonly onClose: () => void }): ReactNode {
  const text = useText();
  const words = text.jobs.dialog;
  const [name, setName] = useState('');
  const [registration, setRegistration] = useState('');
  const [complaint, setComplaint] = useState('');
  const [kinds, setKinds] = useState<Kind[]>([]);
  const [codes, setCodes] = useState('');
  const [isTried, setIsTried] = useState(false);
  const [isSending, setIsSending] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const read = codesIn(codes);

  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setIsTried(true);
    if (read === null || isSending) return;
    setIsSending(true);
    setError(null);
    try {
      const job = await createJob({
        sections: {
          vehicle: { name: name.trim(), ...(registration.trim() === '' ? {} : { registration: registration.trim() }) },
          complaint: { words: complaint.trim(), types: kinds },
          codes: read.map((code) => ({ code, status: 'stored' as const })),
        },
      });
      goTo(`/jobs/${job.id}`);
    } catch (problem) {
      setError(problem);
      setIsSending(false);
    }
  };
  return (
    <Dialog title={words.title} onClose={onClose}>
      <p className="quiet">{words.words}</p>
      <form className="stack" onSubmit={(event) => void submit(event)} noValidate>
        <div className="fields halves">
          <TextField label={words.car} hint={words.carHint} value={name} maxLength={120} onChange={setName} />
          <TextField label={words.registration} value={registration} maxLength={20} onChange={setRegistration} />
        </div>
        <TextField label={words.complaint} lines={2} value={complaint} maxLength={4000} onChange={setComplaint} />
        <Several<Kind>
          label={words.kinds}
          options={(Object.keys(text.trade.complaints) as Kind[]).map((value) => ({
            value,
            name: text.trade.complaints[value],
          }))}
          values={kinds}
          onChange={setKinds}
        />
        <TextField
          label={words.codes}
          hint={words.codesHint}
          value={codes}
          spellCheck={false}
          error={isTried && read === null ? text.job.complaint.badCode : undefined}
          onChange={(value) => setCodes(value.toUpperCase())}
        />
        {error !== null && <ErrorMessage error={error} />}
        <div className="buttons">
          <Button type="submit" kind="primary" disabled={isSending}>
            {words.create}
          </Button>
          <Button onClick={onClose}>{text.common.cancel}</Button>
        </div>
      </form>
    </Dialog>
  );
}
