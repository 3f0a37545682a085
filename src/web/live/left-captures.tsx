/** Recordings that a program left that ended: into the job, or away. */
import { type ReactNode, useState } from 'react';
import type { LeftCapture, LiveKept } from '../../server/contract/live.ts';
import { Button } from '../kit/button.tsx';
import { Message } from '../kit/message.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { DiscardDialog } from './discard-dialog.tsx';
import { KeepDialog } from './keep-dialog.tsx';

interface Props {
  readonly jobId: string;
  readonly left: readonly LeftCapture[];
  readonly onKept: (kept: LiveKept) => void;
  readonly onDiscarded: () => void;
}

export function LeftCaptures({ jobId, left, onKept, onDiscarded }: Props): ReactNode {
  const { live } = useText();
  const { dateTime, bytes } = useNumbers();
  const words = live.left;
  const [asking, setAsking] = useState<{ readonly id: string; readonly what: 'keep' | 'discard' } | null>(null);
  const asked = left.find(({ id }) => id === asking?.id);
  const close = (): void => setAsking(null);
  return (
    <>
      {left.map(({ id, startedAt, by, bytes: size }) => (
        <Message key={id} name={words.title}>
          <p>{words.words(dateTime(startedAt), by, bytes(size))}</p>
          <div className="buttons">
            <Button onClick={() => setAsking({ id, what: 'keep' })}>{words.keep}</Button>
            <Button kind="bare" onClick={() => setAsking({ id, what: 'discard' })}>
              {words.discard}
            </Button>
          </div>
        </Message>
      ))}
      {asked !== undefined && asking?.what === 'keep' && (
        <KeepDialog
          of={{ ...asked, jobId }}
          title={words.title}
          go={words.keep}
          onClose={close}
          onKept={(kept) => {
            close();
            onKept(kept);
          }}
        />
      )}
      {asked !== undefined && asking?.what === 'discard' && (
        <DiscardDialog
          of={{ id: asked.id, jobId }}
          words={words.discardAsk}
          go={words.discard}
          onClose={close}
          onDiscarded={() => {
            close();
            onDiscarded();
          }}
        />
      )}
    </>
  );
}
