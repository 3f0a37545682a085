import { type ReactNode, useState } from 'react';
import { discardLive } from '../api/live.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useText } from '../text/language.ts';

interface Props {
  readonly of: { readonly id: string; readonly jobId: string };
  /** What would be gone. */
  readonly words: string;
  readonly go: string;
  readonly onClose: () => void;
  readonly onDiscarded: () => void;
}

/** Asked every time: this is the one way in which something recorded is lost. */
export function DiscardDialog({ of, words, go, onClose, onDiscarded }: Props): ReactNode {
  const { live, common } = useText();
  const [error, setError] = useState<unknown>(null);
  const [isBusy, setBusy] = useState(false);
  const discard = async (): Promise<void> => {
    setBusy(true);
    try {
      await discardLive(of.jobId, of.id);
      onDiscarded();
    } catch (problem) {
      setError(problem);
      setBusy(false);
    }
  };
  return (
    <Dialog title={live.discard.title} onClose={onClose}>
      <p>{words}</p>
      {error !== null && <ErrorMessage error={error} />}
      <div className="buttons">
        <Button disabled={isBusy} onClick={() => void discard()}>
          {go}
        </Button>
        <Button disabled={isBusy} onClick={onClose}>
          {common.cancel}
        </Button>
      </div>
    </Dialog>
  );
}
