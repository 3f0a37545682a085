import type { ReactNode } from 'react';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';

interface Props {
  readonly name: ReactNode;
  readonly share: number;
  readonly isRival?: boolean;
  /** Certainty in words beside the number. */
  readonly withWords?: boolean;
}

/** A share as a length, a number and a word. */
export function LengthBar({ name, share, isRival = false, withWords = false }: Props): ReactNode {
  const numbers = useNumbers();
  const { trade } = useText();
  return (
    <div className={isRival ? 'bar rival' : 'bar'}>
      <span>
        {name}
        {withWords && <span className="small quiet"> · {trade.certainty(share)}</span>}
      </span>
      <span className="track" aria-hidden="true">
        <i style={{ width: `${Math.max(0, Math.min(1, share)) * 100}%` }} />
      </span>
      <span className="n">{numbers.percent(share)}</span>
    </div>
  );
}
