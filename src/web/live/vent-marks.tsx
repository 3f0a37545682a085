/** The vent valve marked by hand, where a person commands it or hears it. */
import { type ReactNode, useState } from 'react';
import type { LiveChange, LiveStatus } from '../../server/contract/live.ts';
import { changeLive } from '../api/live.ts';
import { announce } from '../kit/announce.tsx';
import { Button } from '../kit/button.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useText } from '../text/language.ts';
import { useTimeWords } from './time-words.ts';

interface Props {
  readonly status: LiveStatus;
  readonly onStatus: (status: LiveStatus) => void;
}

export function VentMarks({ status, onStatus }: Props): ReactNode {
  const { live: text } = useText();
  const time = useTimeWords();
  const words = text.vent;
  const [error, setError] = useState<unknown>(null);
  const isShut = status.ventMarks.some(({ toS }) => toS === undefined);
  const mark = async (vent: NonNullable<LiveChange['vent']>): Promise<void> => {
    setError(null);
    try {
      onStatus((await changeLive(status.jobId, { vent })).live);
      if (vent !== 'forget') announce(vent === 'shut' ? words.markedShut : words.markedOpen);
    } catch (problem) {
      setError(problem);
    }
  };
  return (
    <div className="stack">
      <p>{words.words}</p>
      {status.ventMarks.length > 0 && (
        <ul>
          {status.ventMarks.map(({ fromS, toS }) => (
            <li key={fromS}>{toS === undefined ? words.since(time(fromS)) : words.span(time(fromS), time(toS))}</li>
          ))}
        </ul>
      )}
      {error !== null && <ErrorMessage error={error} onClose={() => setError(null)} />}
      <div className="buttons">
        <Button disabled={status.state === 'stopped'} onClick={() => void mark(isShut ? 'open' : 'shut')}>
          {isShut ? words.openNow : words.shut}
        </Button>
        {status.ventMarks.length > 0 && (
          <Button kind="bare" onClick={() => void mark('forget')}>
            {words.forget}
          </Button>
        )}
      </div>
    </div>
  );
}
