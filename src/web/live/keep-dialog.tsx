/** Taking a recording into the job: what was done is asked here at the latest. */
import { type ReactNode, useState } from 'react';
import type { LiveKept, LiveStatus } from '../../server/contract/live.ts';
import { ApiError } from '../api/client.ts';
import { keepLive } from '../api/live.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { TextField } from '../kit/fields.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useText } from '../text/language.ts';
import { asProcedure, ProcedureChoice, type Said } from './procedure-choice.tsx';

interface Props {
  readonly of: Pick<LiveStatus, 'id' | 'jobId' | 'procedure'>;
  readonly title: string;
  readonly go: string;
  readonly onClose: () => void;
  readonly onKept: (kept: LiveKept) => void;
}

export function KeepDialog({ of, title, go, onClose, onKept }: Props): ReactNode {
  const { live, common } = useText();
  const words = live.keep;
  const [said, setSaid] = useState<Said | null>(of.procedure);
  const [label, setLabel] = useState('');
  const [error, setError] = useState<unknown>(null);
  const [isBusy, setBusy] = useState(false);
  const isNoRecording = error instanceof ApiError && error.status === 422;
  const keep = async (as: 'recording' | 'file'): Promise<void> => {
    if (said === null) return;
    setBusy(true);
    setError(null);
    try {
      onKept(await keepLive(of.jobId, of.id, { procedure: asProcedure(said), label, as }));
    } catch (problem) {
      setError(problem);
      setBusy(false);
    }
  };
  return (
    <Dialog title={title} onClose={onClose} isForced={isBusy}>
      <p>{words.words}</p>
      <TextField label={words.name} hint={words.nameHint} value={label} maxLength={200} onChange={setLabel} />
      <ProcedureChoice label={words.what} value={said} onChange={setSaid} />
      {said === null && <p className="small quiet">{words.whatMissing}</p>}
      {error !== null && <ErrorMessage error={error} />}
      <div className="buttons">
        <Button kind="primary" disabled={said === null || isBusy} onClick={() => void keep('recording')}>
          {isBusy ? words.going : go}
        </Button>
        {isNoRecording && (
          <Button disabled={isBusy} onClick={() => void keep('file')}>
            {words.asFile}
          </Button>
        )}
        <Button disabled={isBusy} onClick={onClose}>
          {common.cancel}
        </Button>
      </div>
    </Dialog>
  );
}
