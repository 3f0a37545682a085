/** An attempt on the recording's clock: where the engine ran, where the car stood, and where it was blocked first. */
import type { ReactNode } from 'react';
import type { AttemptResult } from '../../readiness/evaluate.ts';
import { useText } from '../text/language.ts';

interface Props {
  readonly name: string;
  readonly result: AttemptResult;
  /** Length of the recording. */
  readonly spanS: number;
}

export function AttemptLine({ name, result, spanS }: Props): ReactNode {
  const { monitor: text } = useText();
  const { attempt, blocker } = result;
  if (spanS <= 0) return null;
  const share = (seconds: number): string => `${Math.min(100, Math.max(0, (100 * seconds) / spanS))}%`;
  const blockedS = blocker === undefined ? undefined : (blocker.atS ?? attempt.startS);
  return (
    <figure className="attempt-line">
      <div className="plot" role="img" aria-label={text.why.timeline(name)}>
        <i className="ran" style={{ left: share(attempt.startS), width: share(attempt.stopS - attempt.startS) }} />
        <i className="stood" style={{ left: share(attempt.stopS), width: share(attempt.endS - attempt.stopS) }} />
        {blockedS !== undefined && <i className="blocked" style={{ left: share(blockedS) }} />}
      </div>
      <figcaption className="small quiet">
        <i className="key ran" /> {text.why.running}
        {attempt.endS > attempt.stopS && (
          <>
            {' '}
            <i className="key stood" /> {text.why.standing}
          </>
        )}
        {blockedS !== undefined && (
          <>
            {' '}
            <i className="key blocked" /> {text.why.blockedHere}
          </>
        )}
      </figcaption>
    </figure>
  );
}
