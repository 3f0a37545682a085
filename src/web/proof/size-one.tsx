/** A finding from the recordings of one side of the repair alone. */
import { type ReactNode, useState } from 'react';
import type { RecordingEntry } from '../../jobs/record/job.ts';
import { startFinding } from '../api/jobs.ts';
import { Button } from '../kit/button.tsx';
import { ErrorMessage, Message } from '../kit/message.tsx';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';

interface Props {
  readonly taken: RecordingEntry['taken'];
  readonly words: string;
  readonly act: string;
}

export function SizeOne({ taken, words, act }: Props): ReactNode {
  const { job, work, flush, follow, isReadOnly } = useSheet();
  const { checks } = useText();
  const { percent } = useNumbers();
  const [error, setError] = useState<unknown>(null);
  const running = work.find(({ kind, state }) => kind === 'finding' && (state === 'running' || state === 'waiting'));
  const can = job.car !== null && job.recordings.some((entry) => entry.taken === taken && entry.useInFinding);
  const start = async (): Promise<void> => {
    setError(null);
    try {
      await flush();
      follow(await startFinding(job.id, taken));
    } catch (problem) {
      setError(problem);
    }
  };
  return (
    <Message>
      <p>{words}</p>
      {error !== null && <ErrorMessage error={error} />}
      {running !== undefined && (
        <p>
          {checks.proof.sizing}: {percent(running.fraction)}
        </p>
      )}
      {running === undefined && can && !isReadOnly && (
        <div className="buttons">
          <Button onClick={() => void start()}>{act}</Button>
        </div>
      )}
    </Message>
  );
}
