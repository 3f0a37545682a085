/** Starts a finding, shows how far it is, stops it, and says why it cannot begin. */
import { type ReactNode, useState } from 'react';
import type { ErrorFacts } from '../../server/contract/error.ts';
import type { Work } from '../../server/contract/work.ts';
import { cancelWork, startFinding } from '../api/jobs.ts';
import { Button } from '../kit/button.tsx';
import { ErrorMessage, Message } from '../kit/message.tsx';
import { FactWords } from '../recording/refusal-words.tsx';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';

interface Props {
  readonly hasOne: boolean;
  readonly isOutdated: boolean;
}

export function FindingMaker({ hasOne, isOutdated }: Props): ReactNode {
  const { job, work, flush, follow, isReadOnly } = useSheet();
  const { finding: text } = useText();
  const { percent } = useNumbers();
  const [error, setError] = useState<unknown>(null);
  const [isStarting, setStarting] = useState(false);
  const own = work.filter(({ kind }) => kind === 'finding');
  const running = own.find(({ state }) => state === 'running' || state === 'waiting');
  const last = own.at(-1);

  const start = async (taken?: Work['taken']): Promise<void> => {
    setError(null);
    setStarting(true);
    try {
      await flush();
      follow(await startFinding(job.id, taken));
    } catch (problem) {
      setError(problem);
    } finally {
      setStarting(false);
    }
  };
  const stop = async (id: string): Promise<void> => {
    try {
      await cancelWork(id);
    } catch (problem) {
      setError(problem);
    }
  };

  if (running !== undefined) {
    const words = running.state === 'waiting' ? text.waiting : text.running;
    return (
      <div className="making no-print">
        <p role="status">
          {words}: {percent(running.fraction)}
          <span className="quiet"> · {text.said(running.words)}</span>
        </p>
        <progress aria-label={words} max={1} value={running.fraction} />
        <Button onClick={() => void stop(running.id)}>{text.cancel}</Button>
        {error !== null && <ErrorMessage error={error} />}
      </div>
    );
  }
  if (isReadOnly) return null;
  const missing =
    job.recordings.length === 0
      ? text.needsRecording
      : !job.recordings.some(({ useInFinding }) => useInFinding)
        ? text.needsUsed
        : job.car === null
          ? text.needsCar
          : null;
  return (
    <div className="stack no-print">
      {last?.state === 'failed' && <Failed facts={last.error} />}
      {last?.state === 'cancelled' && (
        <Message>
          <p>{text.cancelled}</p>
        </Message>
      )}
      {last?.state === 'interrupted' && (
        <Message isBad name={text.interrupted}>
          <p>{text.interruptedWords}</p>
          <div className="buttons">
            <Button disabled={missing !== null || isStarting} onClick={() => void start(last.taken)}>
              {text.startAgain}
            </Button>
            <Button kind="bare" onClick={() => void stop(last.id).then(() => follow({ ...last, state: 'done' }))}>
              {text.putAside}
            </Button>
          </div>
        </Message>
      )}
      {error !== null && <ErrorMessage error={error} onRetry={() => void start()} />}
      {missing !== null && <p className="quiet">{missing}</p>}
      <div className="buttons">
        <Button
          kind={!hasOne || isOutdated ? 'primary' : 'plain'}
          disabled={missing !== null || isStarting}
          onClick={() => void start()}
        >
          {hasOne ? text.again : text.make}
        </Button>
      </div>
    </div>
  );
}

function Failed({ facts }: { readonly facts: ErrorFacts | undefined }): ReactNode {
  const { finding: text } = useText();
  return (
    <Message isBad isLoud name={text.failed}>
      {facts !== undefined && <FactWords facts={facts} fileName="" />}
    </Message>
  );
}
