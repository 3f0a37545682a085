/** Clearing codes: what it erases, what it leaves, that all is saved first; done only by who types the word. */
import { type ReactNode, useState } from 'react';
import { clearLiveCodes } from '../api/live.ts';
import { announce } from '../kit/announce.tsx';
import { Button } from '../kit/button.tsx';
import { Caution } from '../kit/caution.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { TextField } from '../kit/fields.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useSpoken } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';

interface Props {
  readonly jobId: string;
  readonly onClose: () => void;
  /** With what became of it, in words. */
  readonly onCleared: (words: string) => void;
}

export function ClearDialog({ jobId, onClose, onCleared }: Props): ReactNode {
  const { text, language } = useSpoken();
  const { list } = useNumbers();
  const words = text.live.clear;
  const [typed, setTyped] = useState('');
  const [isBusy, setBusy] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const isTyped = typed.trim().toLowerCase() === words.word;
  const clear = async (): Promise<void> => {
    if (!isTyped || isBusy) return;
    setBusy(true);
    setError(null);
    try {
      const { cleared, units } = await clearLiveCodes(jobId, language);
      const said = cleared ? words.done(list(units.map((unit) => text.live.codes.unit(unit)))) : words.notDone;
      announce(said);
      onCleared(said);
    } catch (problem) {
      setError(problem);
      setBusy(false);
    }
  };
  return (
    <Dialog title={words.title} onClose={onClose} isForced={isBusy}>
      <h3>{words.erasesTitle}</h3>
      <ul>
        {words.erases.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <h3>{words.keepsTitle}</h3>
      <ul>
        {words.keeps.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <Caution>
        <p>{words.noPass}</p>
        <p>{words.when}</p>
      </Caution>
      <p>{words.saved}</p>
      <p className="small quiet">{words.memory}</p>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          void clear();
        }}
      >
        <TextField label={words.typed} value={typed} maxLength={20} spellCheck={false} onChange={setTyped} />
        {error !== null && <ErrorMessage error={error} />}
        <div className="buttons">
          <Button type="submit" disabled={!isTyped || isBusy}>
            {isBusy ? words.going : words.go}
          </Button>
          <Button disabled={isBusy} onClick={onClose}>
            {text.common.cancel}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}
