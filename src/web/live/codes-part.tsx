/** What the car said of codes and readiness; into the job, or cleared by who has read what that does. */
import { type ReactNode, useState } from 'react';
import type { LiveStatus } from '../../server/contract/live.ts';
import { takeLiveCodes } from '../api/live.ts';
import { announce } from '../kit/announce.tsx';
import { Button } from '../kit/button.tsx';
import { ErrorMessage, Message } from '../kit/message.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { ClearDialog } from './clear-dialog.tsx';

const M_PER_KM = 1000;

export function CodesPart({
  status,
  canChange,
}: {
  readonly status: LiveStatus;
  readonly canChange: boolean;
}): ReactNode {
  const { live: text } = useText();
  const { dateTime, fixed, list } = useNumbers();
  const words = text.codes;
  const [error, setError] = useState<unknown>(null);
  const [isTaken, setTaken] = useState(false);
  const [isAsking, setAsking] = useState(false);
  const [result, setResult] = useState<string | null>(null);
  const { said } = status;
  if (said === null) return <p className="quiet">{words.notRead}</p>;
  const { sinceClear, warmUpsSinceClear, distanceSinceClearM } = said.status;
  const notRun = sinceClear?.monitors.filter(({ supported, complete }) => supported && !complete);
  const take = async (): Promise<void> => {
    setError(null);
    try {
      await takeLiveCodes(status.jobId);
      setTaken(true);
      announce(words.taken);
    } catch (problem) {
      setError(problem);
    }
  };
  return (
    <div className="stack">
      {said.codes.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <ul className="rows live-codes">
          {said.codes.map(({ code, status: how, unit }) => (
            <li key={`${code} ${how} ${unit}`}>
              <span className="code">{code}</span> {words.codeStatus[how]}{' '}
              <span className="small quiet">{words.unit(unit)}</span>
            </li>
          ))}
        </ul>
      )}
      <dl className="facts">
        {sinceClear?.lampOn !== undefined && (
          <div>
            <dt>{words.lamp}</dt>
            <dd>{sinceClear.lampOn ? words.lampOn : words.lampOff}</dd>
          </div>
        )}
        {notRun !== undefined && (
          <div>
            <dt>{words.notRun}</dt>
            <dd>{notRun.length === 0 ? words.allRun : list(notRun.map(({ name }) => words.monitors[name]))}</dd>
          </div>
        )}
        {warmUpsSinceClear !== undefined && (
          <div>
            <dt>{words.warmUps}</dt>
            <dd>{fixed(warmUpsSinceClear, 0)}</dd>
          </div>
        )}
        {distanceSinceClearM !== undefined && (
          <div>
            <dt>{words.distance}</dt>
            <dd>{fixed(distanceSinceClearM / M_PER_KM, 0)} km</dd>
          </div>
        )}
      </dl>
      {status.clearedAt !== null && <p>{words.clearedAt(dateTime(status.clearedAt))}</p>}
      {result !== null && (
        <Message>
          <p>{result}</p>
        </Message>
      )}
      {error !== null && <ErrorMessage error={error} onClose={() => setError(null)} />}
      {canChange && (
        <div className="buttons">
          {said.codes.length > 0 && (
            <Button disabled={isTaken} onClick={() => void take()}>
              {isTaken ? words.taken : words.take}
            </Button>
          )}
          <Button disabled={status.state !== 'sampling'} onClick={() => setAsking(true)}>
            {words.clear}
          </Button>
        </div>
      )}
      {isAsking && (
        <ClearDialog
          jobId={status.jobId}
          onClose={() => setAsking(false)}
          onCleared={(words_) => {
            setAsking(false);
            setResult(words_);
          }}
        />
      )}
    </div>
  );
}
